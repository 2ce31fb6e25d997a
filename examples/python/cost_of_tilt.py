"""How much did the tilt cost? The unit leaned by 0.8°, its opening 140 mm from the middle of the fluid."""

from brimline import volume

told = volume.tilt_error(surface="0.055 m²", offset="140 mm", tilt="0.8 deg")

print("at the opening ", told["height"])
print("in fluid       ", told["volume"])
