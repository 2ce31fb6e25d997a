"""When can I open the plug? Six readings on the way to a window of 38 °C to 48 °C."""

from brimline import warm_up

readings = {"0 min": "19 °C", "2 min": "23 °C", "4 min": "27 °C", "6 min": "30 °C", "8 min": "33 °C", "10 min": "35 °C"}
forecast = warm_up.Forecast(min="38 °C", max="48 °C")
for at, reading in readings.items():
    forecast.sample(at, reading=reading)

print(forecast.text())
