package polewright.session.jsonl;

import polewright.mount.AxisOffset;
import polewright.mount.rig.Experience;
import polewright.sky.angle.Angle;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;

/** What has been learned about a rig on earlier nights. */
final class ExperienceJson {
    private ExperienceJson() {}

    static void write(FieldWriter out, Experience learned) {
        out.whole("nights", learned.nights())
                .number("azimuth_factor", learned.azimuthFactor())
                .number("azimuth_factor_sigma", learned.azimuthSigma())
                .number("altitude_factor", learned.altitudeFactor())
                .number("altitude_factor_sigma", learned.altitudeSigma())
                .whole("clampings", learned.clampings())
                .angle("clamp_east_arcmin", learned.clampShift().east())
                .angle("clamp_up_arcmin", learned.clampShift().up())
                .angle("clamp_sigma_arcmin", learned.clampSigma())
                .number("azimuth_clockwise_probability", learned.azimuthSense())
                .number("altitude_clockwise_probability", learned.altitudeSense());
    }

    static Experience read(FieldReader in) {
        int nights = count(in, "nights");
        double azimuth = in.number("azimuth_factor");
        double azimuthSigma = in.number("azimuth_factor_sigma");
        double altitude = in.number("altitude_factor");
        double altitudeSigma = in.number("altitude_factor_sigma");
        int clampings = count(in, "clampings");
        Angle east = in.angle("clamp_east_arcmin");
        Angle up = in.angle("clamp_up_arcmin");
        Angle sigma = in.angle("clamp_sigma_arcmin");
        double azimuthSense = in.number("azimuth_clockwise_probability", Experience.SENSE_UNKNOWN);
        double altitudeSense = in.number("altitude_clockwise_probability", Experience.SENSE_UNKNOWN);
        return in.made(() -> new Experience(
                nights,
                azimuth,
                azimuthSigma,
                altitude,
                altitudeSigma,
                clampings,
                new AxisOffset(east, up),
                sigma,
                azimuthSense,
                altitudeSense));
    }

    private static int count(FieldReader in, String key) {
        return (int) Math.max(0, Math.min(Integer.MAX_VALUE, in.whole(key)));
    }
}
