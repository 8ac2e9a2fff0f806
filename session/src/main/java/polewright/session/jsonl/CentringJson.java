package polewright.session.jsonl;

import java.time.Instant;
import polewright.mount.pointing.CentredStar;
import polewright.mount.pointing.MountDisplay;
import polewright.sky.angle.Angle;
import polewright.sky.body.SkyBody;
import polewright.sky.fields.BodyFields;
import polewright.sky.fields.BodyNames;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;

/** A centred star and the mount's reading. */
final class CentringJson {
    private CentringJson() {}

    private enum Counted {
        OF_DATE,
        J2000,
        HOUR_ANGLE
    }

    static void write(FieldWriter out, CentredStar centred) {
        out.text("seen_at", centred.at().toString());
        BodyFields.write(out, centred.star());
        out.object("reading", centred.display(), CentringJson::writeDisplay)
                .flag("through_pole", centred.isThroughPole())
                .angle("sigma_arcmin", centred.sigma());
    }

    private static void writeDisplay(FieldWriter out, MountDisplay display) {
        if (display instanceof MountDisplay.RightAscension read) {
            out.word("counted", read.isJ2000() ? Counted.J2000 : Counted.OF_DATE)
                    .angle("ra_deg", read.rightAscension());
        } else if (display instanceof MountDisplay.HourAngle read) {
            out.word("counted", Counted.HOUR_ANGLE).angle("hour_angle_deg", read.hourAngle());
        } else {
            throw new IllegalStateException("no JSON for " + display.getClass());
        }
        out.angle("dec_deg", display.declination());
    }

    /** @param entered the default time of the centring */
    static CentredStar read(FieldReader in, Instant entered, BodyNames names) {
        Instant at = in.has("seen_at") ? in.instant("seen_at") : entered;
        SkyBody star = BodyFields.read(in, names);
        MountDisplay display = in.object("reading", CentringJson::readDisplay);
        boolean throughPole = in.has("through_pole") && in.flag("through_pole");
        Angle sigma = in.angle("sigma_arcmin", CentredStar.USUAL_SIGMA);
        return in.made(() -> new CentredStar(at, star, display, throughPole, sigma));
    }

    private static MountDisplay readDisplay(FieldReader in) {
        Counted counted = in.has("counted") ? in.choice("counted", Counted.class) : Counted.OF_DATE;
        Angle declination = in.angle("dec_deg");
        return switch (counted) {
            case OF_DATE, J2000 -> {
                Angle rightAscension = in.angle("ra_deg");
                yield in.made(
                        () -> new MountDisplay.RightAscension(rightAscension, declination, counted == Counted.J2000));
            }
            case HOUR_ANGLE -> {
                Angle hourAngle = in.angle("hour_angle_deg");
                yield in.made(() -> new MountDisplay.HourAngle(hourAngle, declination));
            }
        };
    }
}
