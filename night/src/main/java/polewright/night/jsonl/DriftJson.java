package polewright.night.jsonl;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import polewright.axis.rig.ClockDirection;
import polewright.axis.sighting.DriftDirection;
import polewright.axis.sighting.FieldDrift;
import polewright.axis.sighting.ReadLength;
import polewright.axis.sighting.StarDrift;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.body.SkyBody;

/** How long a star or a field was watched, how far it went and which way. */
final class DriftJson {
    private static final BigDecimal NANOS_PER_MINUTE = BigDecimal.valueOf(60_000_000_000L);
    // Any length that a star can be watched, told to the nanosecond.
    private static final int ENOUGH_FIGURES = 20;
    private static final double LONGEST_MINUTES = 1e6;

    private DriftJson() {}

    private enum Toward {
        NORTH,
        SOUTH
    }

    static void write(FieldWriter out, StarDrift drift) {
        out.digits("minutes", minutes(drift.length()));
        ViewJson.writeLength(out, drift.drift());
        writeDirection(out, drift.direction());
        out.angle("sigma_arcsec", drift.sigma());
    }

    static StarDrift read(FieldReader in, Instant at, SkyBody star) {
        Duration length = length(in);
        ReadLength drift = ViewJson.readLength(in);
        DriftDirection direction = readDirection(in);
        Angle sigma = in.angle("sigma_arcsec", StarDrift.usualSigma(drift));
        return new StarDrift(at, length, star, drift, direction, sigma);
    }

    static void writeField(FieldWriter out, FieldDrift drift) {
        out.digits("minutes", minutes(drift.length()))
                .angle("ra_deg", drift.rightAscension())
                .angle("dec_deg", drift.declination())
                .angle("north_arcsec", drift.north())
                .angle("east_arcsec", drift.east())
                .angle("sigma_north_arcsec", drift.northSigma())
                .angle("sigma_east_arcsec", drift.eastSigma());
    }

    static FieldDrift readField(FieldReader in, Instant at) {
        return new FieldDrift(
                at,
                length(in),
                in.angle("ra_deg"),
                in.angle("dec_deg"),
                in.angle("north_arcsec"),
                in.angle("east_arcsec"),
                in.angle("sigma_north_arcsec"),
                in.angle("sigma_east_arcsec"));
    }

    private static void writeDirection(FieldWriter out, DriftDirection direction) {
        if (direction instanceof DriftDirection.OnSky sky) {
            out.word("toward", sky.north() ? Toward.NORTH : Toward.SOUTH);
        } else if (direction instanceof DriftDirection.TowardEdge seen) {
            out.number("toward_clock", seen.edge().hours()).object("view", seen.view(), ViewJson::write);
        } else if (direction instanceof DriftDirection.TowardEdgeGivenWest seen) {
            out.number("toward_clock", seen.edge().hours())
                    .number("west_clock", seen.west().hours())
                    .flag("mirrored", seen.mirrored());
        } else {
            throw new IllegalStateException("no JSON for " + direction.getClass());
        }
    }

    private static DriftDirection readDirection(FieldReader in) {
        if (in.has("toward")) {
            return new DriftDirection.OnSky(in.choice("toward", Toward.class) == Toward.NORTH);
        }
        if (!in.has("toward_clock")) {
            throw new InputRefused(
                    "toward is missing", "give \"north\" or \"south\", or toward_clock for the edge that was seen");
        }
        ClockDirection edge = ViewJson.readClock(in, "toward_clock");
        if (in.has("west_clock")) {
            ClockDirection west = ViewJson.readClock(in, "west_clock");
            return new DriftDirection.TowardEdgeGivenWest(edge, west, in.flag("mirrored"));
        }
        if (!in.has("view")) {
            throw in.refused(
                    "toward_clock", " does not tell the way alone", "add the view, or west_clock and mirrored");
        }
        return new DriftDirection.TowardEdge(edge, in.object("view", ViewJson::read));
    }

    private static Duration length(FieldReader in) {
        double rough = in.number("minutes");
        if (Math.abs(rough) > LONGEST_MINUTES) {
            throw in.refused("minutes", " is more than a night", "give how long the star was watched");
        }
        return duration(in.digits("minutes"));
    }

    private static Duration duration(String minutes) {
        return Duration.ofNanos(new BigDecimal(minutes)
                .multiply(NANOS_PER_MINUTE)
                .setScale(0, RoundingMode.HALF_EVEN)
                .longValueExact());
    }

    /** The shortest decimal that reads back to the same nanosecond. */
    private static String minutes(Duration length) {
        BigDecimal nanos = BigDecimal.valueOf(length.toNanos());
        for (int figures = 1; figures <= ENOUGH_FIGURES; figures++) {
            String digits = Digits.of(nanos.divide(NANOS_PER_MINUTE, new MathContext(figures)));
            if (duration(digits).equals(length)) {
                return digits;
            }
        }
        throw new IllegalStateException("no decimal for " + length);
    }
}
