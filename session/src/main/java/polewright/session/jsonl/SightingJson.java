package polewright.session.jsonl;

import java.time.Instant;
import polewright.alignment.sighting.BodyAltitude;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.FieldDrift;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StillPoint;
import polewright.alignment.sighting.TurnedFrames;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.View;
import polewright.session.event.EventKind;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.body.SkyBody;

/**
 * Sightings. Each has its own time in addition to the time of entry, and an uncertainty that a hand-written file may
 * leave out.
 */
final class SightingJson {
    private SightingJson() {}

    static void write(FieldWriter out, Sighting sighting) {
        if (!(sighting instanceof TurnedFrames)) {
            // Each frame has its own time.
            out.text("seen_at", sighting.at().toString());
        }
        if (sighting instanceof CompassBearing compass) {
            out.angle("magnetic_bearing_deg", compass.magneticBearing())
                    .angle("declination_deg", compass.declination())
                    .angle("sigma_deg", compass.sigma());
        } else if (sighting instanceof LevelledScale scale) {
            out.angle("altitude_deg", scale.altitude()).angle("sigma_deg", scale.sigma());
        } else if (sighting instanceof BodyBearing bearing) {
            BodyJson.write(out, bearing.body());
            out.angle("clockwise_deg", bearing.clockwise()).angle("sigma_deg", bearing.sigma());
        } else if (sighting instanceof BodyAltitude altitude) {
            BodyJson.write(out, altitude.body());
            out.angle("axis_above_deg", altitude.axisAboveBody()).angle("sigma_deg", altitude.sigma());
        } else if (sighting instanceof StillPoint still) {
            BodyJson.write(out, still.star());
            ViewJson.writeLength(out, still.distance());
            out.number("star_clock", still.toward().hours())
                    .object("view", still.view(), ViewJson::write)
                    .angle("sigma_deg", still.sigma());
        } else if (sighting instanceof StarDrift drift) {
            BodyJson.write(out, drift.star());
            DriftJson.write(out, drift);
        } else if (sighting instanceof TurnedFrames frames) {
            FramesJson.write(out, frames);
        } else if (sighting instanceof FieldDrift drift) {
            DriftJson.writeField(out, drift);
        } else {
            throw new IllegalStateException("no JSON for " + sighting.getClass());
        }
    }

    /**
     * @param kind one of the sightings
     * @param entered the default time of the sighting
     */
    static Sighting read(FieldReader in, EventKind kind, Instant entered, BodyNames names) {
        if (kind == EventKind.FRAMES) {
            return FramesJson.read(in);
        }
        Instant at = in.has("seen_at") ? in.instant("seen_at") : entered;
        return switch (kind) {
            case COMPASS ->
                new CompassBearing(
                        at,
                        in.angle("magnetic_bearing_deg"),
                        in.angle("declination_deg"),
                        in.angle("sigma_deg", CompassBearing.USUAL_SIGMA));
            case SCALE ->
                new LevelledScale(at, in.angle("altitude_deg"), in.angle("sigma_deg", LevelledScale.USUAL_SIGMA));
            case BEARING -> bearing(in, at, BodyBearing.Line.TOWARD_BODY, names);
            case SHADOW -> bearing(in, at, BodyBearing.Line.SHADOW, names);
            case ALTITUDE ->
                new BodyAltitude(
                        at,
                        BodyJson.read(in, names),
                        in.angle("axis_above_deg"),
                        in.angle("sigma_deg", BodyAltitude.USUAL_SIGMA));
            case STILL_POINT -> stillPoint(in, at, names);
            case DRIFT -> DriftJson.read(in, at, BodyJson.read(in, names));
            case FIELD_DRIFT -> DriftJson.readField(in, at);
            default -> throw new IllegalArgumentException(kind + " is not a sighting");
        };
    }

    private static BodyBearing bearing(FieldReader in, Instant at, BodyBearing.Line line, BodyNames names) {
        return new BodyBearing(
                at,
                BodyJson.read(in, names),
                line,
                in.angle("clockwise_deg"),
                in.angle("sigma_deg", BodyBearing.USUAL_SIGMA));
    }

    private static StillPoint stillPoint(FieldReader in, Instant at, BodyNames names) {
        SkyBody star = BodyJson.read(in, names);
        ReadLength distance = ViewJson.readLength(in);
        ClockDirection toward = ViewJson.readClock(in, "star_clock");
        View view = in.object("view", ViewJson::read);
        Angle sigma = in.has("sigma_deg")
                ? in.angle("sigma_deg")
                : StillPoint.usualSigma(distance)
                        .orElseThrow(() -> new InputRefused(
                                "sigma_deg is missing, and a distance in "
                                        + distance.unit().words() + " does not give it",
                                "give the uncertainty of the star's position, 1 sigma"));
        return new StillPoint(at, star, distance, toward, view, sigma);
    }
}
