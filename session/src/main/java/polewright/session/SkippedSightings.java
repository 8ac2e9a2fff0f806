package polewright.session;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.alignment.advice.AdvisedStar;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.advice.Situation;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.session.event.Skip;
import polewright.sky.angle.Angle;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.SkyBody;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;
import polewright.sky.time.SkyTime;

/**
 * What the observer could not sight tonight, and what can still be advised.
 *
 * <ul>
 * <li>A star that was not found, and an instrument that is not at hand, are excluded all night.
 * <li>A cloud excludes the sky within 30° of the star's position for an hour.
 * <li>A tree or roof excludes, all night, everything up to 10° to its left or right and up to 5° above it.
 * <li>A pole star that is not in the field is excluded until the axis is turned or the mount is moved.
 * </ul>
 *
 * <p>These sizes and durations are our own choice: one press should lead to a clear part of the sky.
 *
 * @param skips the events that report it, in order
 */
public record SkippedSightings(List<LoggedEvent> skips) {
    static final SkippedSightings NONE = new SkippedSightings(List.of());

    private static final Duration CLOUD_PASSES = Duration.ofHours(1);
    private static final Angle CLOUD_RADIUS = Angle.ofDegrees(30);
    private static final Angle OBSTACLE_HALF_WIDTH = Angle.ofDegrees(10);
    private static final Angle OBSTACLE_ABOVE_STAR = Angle.ofDegrees(5);
    // Matches a typed position of a star to its catalogue position; advised stars are farther apart than this.
    private static final Angle SAME_STAR = Angle.ofArcminutes(1);

    public SkippedSightings {
        skips = List.copyOf(skips);
    }

    /** The same after another event of the night. */
    SkippedSightings after(LoggedEvent logged) {
        if (logged.event() instanceof NightEvent.SightingSkipped) {
            List<LoggedEvent> more = new ArrayList<>(skips);
            more.add(logged);
            return new SkippedSightings(more);
        }
        return logged.event().movesAxisFar() && isPoleStarOutOfView()
                ? new SkippedSightings(skips.stream()
                        .filter(skip -> skip(skip).because() != Skip.Reason.NOT_IN_VIEW)
                        .toList())
                : this;
    }

    /** Whether the pole star was not in the field with the current axis. */
    public boolean isPoleStarOutOfView() {
        return skips.stream().anyMatch(logged -> skip(logged).because() == Skip.Reason.NOT_IN_VIEW);
    }

    /** When the first of the clouds is expected to have passed; empty if there is none now. */
    public Optional<Instant> lookAgain(Instant now) {
        return skips.stream()
                .filter(logged -> isCloudAt(now, logged))
                .map(logged -> logged.at().plus(CLOUD_PASSES))
                .min(Instant::compareTo);
    }

    /** The skips that still leave something out of the advice: all but clouds that are taken to have passed. */
    public List<LoggedEvent> stillExcluding(Instant now) {
        return skips.stream()
                .filter(logged -> skip(logged).because() != Skip.Reason.CLOUD || isCloudAt(now, logged))
                .toList();
    }

    /** A situation without what cannot be sighted. */
    Situation leaving(Situation all, ObservingMoment moment) {
        if (skips.isEmpty()) {
            return all;
        }
        Rig rig = withoutMissing(all.rig());
        List<AdvisedStar> stars = visible(all.stars(), moment);
        Set<SightingKind> ruledOut = EnumSet.noneOf(SightingKind.class);
        Instant now = moment.time().utc();
        skips.stream()
                .filter(logged -> isOfWholeKind(logged, now))
                .forEach(logged -> ruledOut.addAll(skip(logged).sighting().kinds()));
        boolean isNoStarLeft = stars.isEmpty() && !all.stars().isEmpty();
        boolean isNothingToLookThrough =
                rig.optics().isEmpty() && !all.rig().optics().isEmpty();
        if (isNoStarLeft || isNothingToLookThrough) {
            // An empty list of stars would mean ideal stars, and a rig without optics readings in arcseconds.
            Stream.of(Skip.Sighting.STILL_POINT, Skip.Sighting.DRIFT)
                    .forEach(sighting -> ruledOut.addAll(sighting.kinds()));
        }
        return new Situation(
                rig,
                all.fix(),
                all.allowance(),
                all.clamped(),
                all.sinceClamp(),
                all.alreadyRead(),
                all.daylight(),
                stars,
                all.isTurnUnseen(),
                ruledOut);
    }

    /** Whether this excludes its whole kind of sighting now, whatever the star. */
    private static boolean isOfWholeKind(LoggedEvent logged, Instant now) {
        Skip skip = skip(logged);
        return switch (skip.because()) {
            case NO_INSTRUMENT, NOT_IN_VIEW -> true;
            case CLOUD -> skip.star().isEmpty() && isCloudAt(now, logged);
            case NOT_FOUND, HIDDEN, NO_OPTIC -> false;
        };
    }

    private Rig withoutMissing(Rig rig) {
        List<Optic> available = rig.optics().stream()
                .filter(optic -> skips.stream()
                        .flatMap(logged -> skip(logged).optic().stream())
                        .noneMatch(missing -> missing.equalsIgnoreCase(optic.name())))
                .toList();
        return available.size() == rig.optics().size() ? rig : rig.withOptics(available);
    }

    private List<AdvisedStar> visible(List<AdvisedStar> up, ObservingMoment moment) {
        Predicate<AdvisedStar> isExcluded =
                skips.stream().map(logged -> excludedBy(logged, moment)).reduce(star -> false, Predicate::or);
        return up.stream().filter(isExcluded.negate()).toList();
    }

    /** The stars that a skip excludes. */
    private static Predicate<AdvisedStar> excludedBy(LoggedEvent logged, ObservingMoment moment) {
        Skip skip = skip(logged);
        if (skip.star().isEmpty()) {
            return star -> false;
        }
        SkyBody skipped = skip.star().get();
        return switch (skip.because()) {
            case NOT_FOUND -> {
                ApparentPlace place = Ephemeris.apparent(skipped, moment);
                yield star -> place.separation(moment.apparent(star.place())).compareTo(SAME_STAR) < 0;
            }
            case CLOUD -> {
                Vector3D cloud = then(skipped, logged.at(), moment).enu();
                boolean isThere = isCloudAt(moment.time().utc(), logged);
                yield star -> isThere && Vector3D.angle(cloud, star.direction().enu()) < CLOUD_RADIUS.radians();
            }
            case HIDDEN -> {
                RefractedDirection obstacle = then(skipped, logged.at(), moment);
                yield star -> isBehind(obstacle, star.direction());
            }
            case NOT_IN_VIEW, NO_OPTIC, NO_INSTRUMENT -> star -> false;
        };
    }

    private static boolean isBehind(RefractedDirection obstacle, RefractedDirection star) {
        Angle sideways =
                star.azimuth().minus(obstacle.azimuth()).wrappedSigned().abs();
        return sideways.compareTo(OBSTACLE_HALF_WIDTH) < 0
                && star.altitude().compareTo(obstacle.altitude().plus(OBSTACLE_ABOVE_STAR)) < 0;
    }

    private static boolean isCloudAt(Instant now, LoggedEvent logged) {
        return skip(logged).because() == Skip.Reason.CLOUD
                && now.isBefore(logged.at().plus(CLOUD_PASSES));
    }

    private static RefractedDirection then(SkyBody body, Instant at, ObservingMoment moment) {
        ObservingMoment then = moment.at(SkyTime.of(at));
        return then.refracted(Ephemeris.apparent(body, then));
    }

    private static Skip skip(LoggedEvent logged) {
        return ((NightEvent.SightingSkipped) logged.event()).skip();
    }
}
