package polewright.app.command;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.app.text.AngleWords;
import polewright.axis.sighting.BodyAltitude;
import polewright.axis.sighting.BodyBearing;
import polewright.axis.sighting.Sighting;
import polewright.axis.sighting.StarDrift;
import polewright.axis.sighting.StillPoint;
import polewright.night.event.NightEvent;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SunGuard;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** A warning when somebody points near the Sun while it is up. */
final class SunCaution {
    private SunCaution() {}

    /** For a sighting that was just logged: one line, or none. */
    static List<String> of(NightEvent event, Site site) {
        if (event instanceof NightEvent.StarCentred star) {
            ObservingMoment moment =
                    ObservingMoment.of(site, SkyTime.of(star.centred().at()), Weather.standardAt(site.heightMetres()));
            return near(moment, Ephemeris.apparent(star.centred().star(), moment));
        }
        if (!(event instanceof NightEvent.SightingTaken taken)) {
            return List.of();
        }
        return pointedAt(taken.sighting())
                .map(body -> {
                    ObservingMoment moment = ObservingMoment.of(
                            site, SkyTime.of(taken.sighting().at()), Weather.standardAt(site.heightMetres()));
                    return near(moment, Ephemeris.apparent(body, moment));
                })
                .orElse(List.of());
    }

    /** One line when the Sun is up and this place is within {@link SunGuard#KEEP_AWAY} of it, else none. */
    static List<String> near(ObservingMoment moment, ApparentPlace place) {
        SunGuard guard = SunGuard.at(moment);
        if (!guard.isSunUp() || guard.distance(moment.airless(place)).compareTo(SunGuard.KEEP_AWAY) >= 0) {
            return List.of();
        }
        return List.of("CARE  Only " + AngleWords.degrees(Ephemeris.sunDistance(place, moment))
                + " from the Sun, which is up: do not point there without a proper solar filter.");
    }

    /** For what is to be followed for so long: near the Sun when it begins or ends, and whether it begins by day. */
    static List<String> whileFollowed(SkyBody body, NightEvent.Begun begun, Instant from, Duration followed) {
        List<String> lines = new ArrayList<>();
        Stream.of(from, from.plus(followed))
                .map(at -> ObservingMoment.of(begun.site(), SkyTime.of(at), begun.weather()))
                .map(moment -> near(moment, Ephemeris.apparent(body, moment)))
                .filter(near -> !near.isEmpty())
                .findFirst()
                .ifPresent(lines::addAll);
        if (SunGuard.at(ObservingMoment.of(begun.site(), SkyTime.of(from), begun.weather()))
                .isSunUp()) {
            lines.add("NOTE  It is day at " + from.truncatedTo(ChronoUnit.MINUTES)
                    + ", when this is to begin: --at names another time.");
        }
        return lines;
    }

    private static Optional<SkyBody> pointedAt(Sighting sighting) {
        if (sighting instanceof StarDrift drift) {
            return Optional.of(drift.star());
        } else if (sighting instanceof StillPoint still) {
            return Optional.of(still.star());
        } else if (sighting instanceof BodyAltitude altitude) {
            return Optional.of(altitude.body());
        } else if (sighting instanceof BodyBearing bearing && bearing.line() == BodyBearing.Line.TOWARD_BODY) {
            return Optional.of(bearing.body());
        }
        return Optional.empty();
    }
}
