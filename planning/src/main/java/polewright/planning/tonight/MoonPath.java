package polewright.planning.tonight;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.almanac.LunarPhase;
import polewright.sky.almanac.Moonlight;
import polewright.sky.angle.Angle;
import polewright.sky.body.SolarSystem;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.Interval;
import polewright.sky.time.SiderealRate;

/** The Moon at regular times of a night, computed once for all targets. */
final class MoonPath {
    private static final Duration STEP = Duration.ofMinutes(20);

    // A thin Moon outshines everything within 5°, a full one within 20° (common practice).
    private static final Angle GLARE_LEAST = Angle.ofDegrees(5);
    private static final Angle GLARE_MORE_WHEN_FULL = Angle.ofDegrees(15);

    /**
     * At one time: the Moon's direction in the site's hour-angle frame, and its light.
     *
     * @param glare radius within which its glare drowns faint objects; zero while it is down
     */
    record Now(Instant at, Vector3D unit, Moonlight light, Angle glare) {
        Angle distance(HourAnglePlace place) {
            return new Angle(Vector3D.angle(unit, MoonPath.unit(place)));
        }
    }

    private final List<Now> times;

    private MoonPath(List<Now> times) {
        this.times = times;
    }

    static MoonPath of(Evening evening, Interval when) {
        List<Now> times = new ArrayList<>();
        for (Instant at = when.from(); !at.isAfter(when.to()); at = at.plus(STEP)) {
            ObservingMoment moment = evening.moment(at);
            var place = SolarSystem.apparent(SolarSystemBody.MOON, moment);
            Angle altitude = moment.airless(place).altitude();
            LunarPhase phase = LunarPhase.at(moment);
            times.add(new Now(
                    at,
                    unit(moment.hourAngle(place)),
                    Moonlight.of(altitude, phase.phaseAngle()),
                    altitude.radians() > 0
                            ? GLARE_LEAST.plus(GLARE_MORE_WHEN_FULL.times(phase.litShare()))
                            : Angle.ZERO));
        }
        return new MoonPath(times);
    }

    List<Now> times() {
        return times;
    }

    /** At any time of the night: the nearest computed one, rotated with the sky; the Moon lags by at most 5′. */
    Now at(Instant at) {
        double steps = Duration.between(times.get(0).at(), at).toSeconds() / (double) STEP.toSeconds();
        Now near = times.get((int) Math.max(0, Math.min(times.size() - 1L, Math.round(steps))));
        double turn = SiderealRate.during(Duration.between(near.at(), at).toMillis() / 1000.0)
                .radians();
        Vector3D unit = near.unit();
        return new Now(
                at,
                new Vector3D(
                        unit.getX() * Math.cos(turn) - unit.getY() * Math.sin(turn),
                        unit.getX() * Math.sin(turn) + unit.getY() * Math.cos(turn),
                        unit.getZ()),
                near.light(),
                near.glare());
    }

    static Vector3D unit(HourAnglePlace place) {
        double cosDec = place.declination().cos();
        return new Vector3D(
                cosDec * place.hourAngle().cos(),
                cosDec * place.hourAngle().sin(),
                place.declination().sin());
    }
}
