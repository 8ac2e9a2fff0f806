package polewright.session.jsonl;

import java.time.Duration;
import polewright.mount.rig.RightAscensionDrive;
import polewright.mount.rig.TrackingRate;
import polewright.mount.rig.Worm;
import polewright.sky.angle.Angle;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;

/** The right-ascension drive. Missing values have the usual defaults. */
final class DriveJson {
    private DriveJson() {}

    static void write(FieldWriter out, RightAscensionDrive drive) {
        out.word("rate", drive.rate())
                .angle("periodic_error_arcsec", drive.worm().peakToPeak())
                .duration("worm_period_s", drive.worm().period());
    }

    static RightAscensionDrive read(FieldReader in) {
        RightAscensionDrive usual = RightAscensionDrive.USUAL;
        TrackingRate rate = in.has("rate") ? in.choice("rate", TrackingRate.class) : usual.rate();
        Angle error = in.angle("periodic_error_arcsec", usual.worm().peakToPeak());
        Duration period = in.has("worm_period_s")
                ? in.duration("worm_period_s")
                : usual.worm().period();
        return in.made(() -> new RightAscensionDrive(rate, new Worm(error, period)));
    }
}
