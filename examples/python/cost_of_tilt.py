"""How much did the tilt cost? The unit leaned by 0.8°, its opening 140 mm from the middle of the fluid."""

from brimline import Amount, volume

told = volume.tilt_error(surface="0.055 m²", offset="140 mm", tilt="0.8 deg")

print("at the opening ", Amount(told["height"]).to("mm", 1))
print("in fluid       ", Amount(told["volume"]).to("L", 2))
print("An opening on the low side reads full that much too early, one on the high side too late.")
