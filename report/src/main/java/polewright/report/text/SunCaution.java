package polewright.report.text;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import polewright.session.event.Correction;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SunGuard;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** Warns of pointing near the Sun while it is up. */
public final class SunCaution {
    private SunCaution() {}

    /** For an event just logged: one line, or none. */
    public static List<Remark> of(NightEvent event, Site site) {
        if (event instanceof Correction.MeasurementCorrected corrected) {
            return of(corrected.meant(), site);
        }
        if (!(event instanceof NightEvent.Measurement measured)) {
            return List.of();
        }
        Weather weather = Weather.standardAt(site.heightMetres());
        return measured.linesOfSight(site, weather).stream()
                .map(line -> near(ObservingMoment.of(site, SkyTime.of(line.at()), weather), line.direction()))
                .filter(near -> !near.isEmpty())
                .findFirst()
                .orElse(List.of());
    }

    /** One line if the Sun is up and this position is within {@link SunGuard#KEEP_AWAY} of it, otherwise none. */
    public static List<Remark> near(ObservingMoment moment, ApparentPlace place) {
        return near(moment, moment.airless(place));
    }

    private static List<Remark> near(ObservingMoment moment, AirlessDirection direction) {
        SunGuard guard = SunGuard.at(moment);
        Angle distance = guard.distance(direction);
        if (!guard.isSunUp() || distance.compareTo(SunGuard.KEEP_AWAY) >= 0) {
            return List.of();
        }
        return List.of(Remark.caution("Only " + AngleWords.degrees(distance.plus(guard.semiDiameter()))
                + " from the Sun, which is up. Do not point there without a proper solar filter."));
    }

    /**
     * For a body that will be followed: whether it is near the Sun at the start or end, and whether the start is by
     * day.
     */
    public static List<Remark> whileFollowed(SkyBody body, NightEvent.Begun begun, Instant from, Duration followed) {
        List<Remark> remarks = new ArrayList<>();
        Stream.of(from, from.plus(followed))
                .map(at -> ObservingMoment.of(begun.site(), SkyTime.of(at), begun.weather()))
                .map(moment -> near(moment, Ephemeris.apparent(body, moment)))
                .filter(near -> !near.isEmpty())
                .findFirst()
                .ifPresent(remarks::addAll);
        if (SunGuard.at(ObservingMoment.of(begun.site(), SkyTime.of(from), begun.weather()))
                .isSunUp()) {
            remarks.add(Remark.note("It is daylight at " + from.truncatedTo(ChronoUnit.MINUTES)
                    + ", when this begins. Give a later time if you start after dark."));
        }
        return remarks;
    }
}
