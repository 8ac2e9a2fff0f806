package polewright.session.jsonl;

import java.time.Duration;
import java.time.Instant;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.FieldDrift;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.ReticleNorth;
import polewright.alignment.sighting.StarDrift;
import polewright.mount.rig.ClockDirection;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.body.SkyBody;

/** The duration, distance and direction of a star's or a field's drift. */
final class DriftJson {
    private DriftJson() {}

    private enum Toward {
        NORTH,
        SOUTH
    }

    /** How a reticle was oriented. */
    private enum Reticle {
        TRAIL,
        SLOW_MOTION
    }

    static void write(FieldWriter out, StarDrift drift) {
        out.duration("minutes", drift.length());
        ViewJson.writeLength(out, drift.drift());
        writeDirection(out, drift.direction());
        out.angle("sigma_arcsec", drift.sigma());
    }

    static StarDrift read(FieldReader in, Instant at, SkyBody star) {
        Duration length = in.duration("minutes");
        ReadLength drift = ViewJson.readLength(in);
        DriftDirection direction = readDirection(in);
        Angle sigma = in.angle("sigma_arcsec", StarDrift.usualSigma(drift));
        return new StarDrift(at, length, star, drift, direction, sigma);
    }

    static void writeField(FieldWriter out, FieldDrift drift) {
        out.duration("minutes", drift.length())
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
                in.duration("minutes"),
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
            if (sky.readAlong() != ReticleNorth.NOT_TOLD) {
                out.word("reticle", sky.readAlong() == ReticleNorth.SKY ? Reticle.TRAIL : Reticle.SLOW_MOTION);
            }
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

    private static ReticleNorth readAlong(FieldReader in) {
        if (!in.has("reticle")) {
            return ReticleNorth.NOT_TOLD;
        }
        return in.choice("reticle", Reticle.class) == Reticle.TRAIL ? ReticleNorth.SKY : ReticleNorth.MOUNT;
    }

    private static DriftDirection readDirection(FieldReader in) {
        if (in.has("toward")) {
            return new DriftDirection.OnSky(in.choice("toward", Toward.class) == Toward.NORTH, readAlong(in));
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
                    "toward_clock", " alone does not give the direction", "add the view, or west_clock and mirrored");
        }
        return new DriftDirection.TowardEdge(edge, in.object("view", ViewJson::read));
    }
}
