package polewright.session.jsonl;

import java.util.List;
import polewright.sky.angle.Angle;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;
import polewright.sky.place.Horizon;

/** The local horizon. */
final class HorizonJson {
    private HorizonJson() {}

    static void write(FieldWriter out, Horizon horizon) {
        out.list(
                "skyline",
                horizon.points(),
                (point, p) -> point.angle("az_deg", p.azimuth()).angle("alt_deg", p.altitude()));
    }

    static Horizon read(FieldReader in) {
        List<Horizon.Point> points = in.list("skyline", HorizonJson::readPoint);
        return in.made(() -> new Horizon(points));
    }

    private static Horizon.Point readPoint(FieldReader in) {
        Angle azimuth = in.angle("az_deg");
        Angle altitude = in.angle("alt_deg");
        return in.made(() -> new Horizon.Point(azimuth, altitude));
    }
}
