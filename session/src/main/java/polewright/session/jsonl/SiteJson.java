package polewright.session.jsonl;

import polewright.sky.angle.Angle;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** Site and weather. */
final class SiteJson {
    private static final double USUAL_HUMIDITY = 0.5;

    private SiteJson() {}

    static void write(FieldWriter out, Site site) {
        out.angle("lat_deg", site.latitude())
                .angle("lon_deg", site.longitude())
                .number("height_m", site.heightMetres());
    }

    static Site read(FieldReader in) {
        Angle latitude = in.angle("lat_deg");
        Angle longitude = in.angle("lon_deg");
        double height = in.number("height_m", 0);
        return in.made(() -> new Site(latitude, longitude, height));
    }

    static void writeWeather(FieldWriter out, Weather weather) {
        out.number("pressure_hpa", weather.pressureHpa())
                .number("temperature_c", weather.temperatureC())
                .number("relative_humidity", weather.relativeHumidity());
    }

    static Weather readWeather(FieldReader in) {
        double pressure = in.number("pressure_hpa");
        double temperature = in.number("temperature_c");
        double humidity = in.number("relative_humidity", USUAL_HUMIDITY);
        return in.made(() -> new Weather(pressure, temperature, humidity));
    }
}
