package polewright.session;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.Adviser;
import polewright.alignment.advice.Daylight;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.advice.Situation;
import polewright.alignment.allowance.Allowance;
import polewright.alignment.allowance.WorkZone;
import polewright.alignment.allowance.ZoneFinder;
import polewright.alignment.allowance.ZoneOutcome;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.FixSolver;
import polewright.alignment.fix.GrowingFix;
import polewright.alignment.fix.Step;
import polewright.alignment.sighting.CentredStars;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.SightingFormat;
import polewright.alignment.work.Work;
import polewright.mount.pointing.CentredStar;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.body.SunGuard;
import polewright.sky.place.Horizon;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.SkyTime;

/**
 * The state of a night: a pure function of its events.
 *
 * @param begun the beginning of the night
 * @param fix the estimate of the axis
 * @param work tonight's work, if given; it then determines the tolerance
 * @param allowance the current tolerance
 * @param clamped whether the clamps are tight
 * @param situation what the advice depends on, for further questions to the adviser
 * @param skipped what the observer could not sight
 * @param advice what to do next
 * @param standing the events not withdrawn, in order, with turns as corrected
 * @param lastUndoable the last event that can be undone, if there is one
 * @param now the time of this state
 */
public record NightState(
        NightEvent.Begun begun,
        Fix fix,
        Optional<Work> work,
        Allowance allowance,
        boolean clamped,
        Situation situation,
        SkippedSightings skipped,
        Advice advice,
        List<LoggedEvent> standing,
        Optional<LoggedEvent> lastUndoable,
        Instant now) {
    // A lower Sun casts a faint shadow too long for the ground; a higher one a stub whose direction changes too fast.
    private static final double LOWEST_SHADOW_DEG = 5;
    private static final double HIGHEST_SHADOW_DEG = 70;

    /**
     * The state after these events, with advice for the time of the last one.
     *
     * @throws InputRefused if the events do not start with a beginning, or if a sighting among them is impossible; the
     *     message names the event number
     */
    public static NightState of(List<LoggedEvent> events) {
        return of(
                events,
                events.isEmpty() ? Instant.EPOCH : events.get(events.size() - 1).at(),
                new ModelCache());
    }

    /**
     * The same with advice for another time, sharing solved sightings between calls on a growing night.
     *
     * @param now whether it is day or night determines what can be sighted next
     */
    public static NightState of(List<LoggedEvent> events, Instant now, ModelCache models) {
        ModelCache.Counted counted = models.counted(events);
        List<LoggedEvent> standing = counted.meant();
        if (standing.isEmpty() || !(standing.get(0).event() instanceof NightEvent.Begun begun)) {
            throw new InputRefused("the night has no beginning", "start it with {do:begin}");
        }
        EventsSoFar soFar = models.soFar(standing, begun);
        Fix fix = models.fix(begun, soFar.steps());
        ObservingMoment moment = ObservingMoment.of(begun.site(), SkyTime.of(now), begun.weather());
        Daylight daylight = daylight(moment);
        Situation sky = new Situation(
                fix.rig(),
                fix,
                soFar.allowance(),
                soFar.isClamped(),
                soFar.confirmation(fix),
                soFar.alreadyRead(),
                daylight,
                // By day no star is offered at all: sweeping for one could sweep across the Sun.
                daylight == Daylight.NONE ? BrightStars.upAt(moment) : List.of(),
                soFar.isTurnUnseen(),
                Set.of());
        Situation situation = soFar.skipped().leaving(sky, moment);
        NightState state = new NightState(
                begun,
                fix,
                soFar.work(),
                soFar.allowance(),
                soFar.isClamped(),
                situation,
                soFar.skipped(),
                advice(situation, soFar.skipped(), now),
                standing,
                counted.lastUndoable(),
                now);
        return isCameraInUse(standing) ? state.byCamera() : state;
    }

    /** The advice for a situation without everything that was skipped. */
    static Advice advice(Situation situation, SkippedSightings skipped, Instant now) {
        Advice advice = Adviser.advise(situation);
        // After dark there is always something to sight, unless everything was skipped.
        return advice instanceof Advice.WaitForDark && situation.daylight() == Daylight.NONE
                ? new Advice.WaitForSky(advice.probabilityNow(), skipped.lookAgain(now))
                : advice;
    }

    /** Whether the last sighting was made with frames. */
    private static boolean isCameraInUse(List<LoggedEvent> standing) {
        for (int i = standing.size() - 1; i >= 0; i--) {
            if (standing.get(i).event() instanceof NightEvent.Measurement last) {
                return last.asSighting()
                        .filter(sighting -> sighting.format() == SightingFormat.FRAMES)
                        .isPresent();
            }
        }
        return false;
    }

    /**
     * The same for an observer with a camera: after dark the next sighting is left to frames, which are more accurate
     * and faster than the eye. If sightings contradict each other, a different kind may still be advised.
     */
    public NightState byCamera() {
        boolean isForTheEye = advice instanceof Advice.TakeSighting take
                && take.kind() != SightingKind.FRAMES
                && !situation.ruledOut().contains(SightingKind.FRAMES)
                && situation.daylight() == Daylight.NONE
                && !(fix instanceof Fix.Dubious);
        if (!isForTheEye) {
            return this;
        }
        Advice.TakeSighting take = (Advice.TakeSighting) advice;
        Advice frames = new Advice.TakeSighting(
                take.probabilityNow(), SightingKind.FRAMES, Optional.empty(), Duration.ZERO, take.reason());
        return new NightState(
                begun, fix, work, allowance, clamped, situation, skipped, frames, standing, lastUndoable, now);
    }

    /**
     * Only the fix after these events, without advice.
     *
     * @param standing events not withdrawn, the beginning first
     * @throws InputRefused if a sighting among them is impossible; the message names the event number
     */
    public static Fix fixOf(List<LoggedEvent> standing) {
        if (standing.isEmpty() || !(standing.get(0).event() instanceof NightEvent.Begun begun)) {
            throw new InputRefused("the night has no beginning", "start it with {do:begin}");
        }
        return FixSolver.solve(begun.site(), begun.rig(), begun.weather(), NightSteps.of(standing, begun));
    }

    /**
     * The likely mistake in the clock or site if it is in fact dark now; empty if the Sun is down as computed, or if
     * something in the sky was sighted before, so that it is morning.
     */
    public Optional<MistakenClockOrSite> mistakeIfDark() {
        boolean isSkySeen = standing.stream()
                .flatMap(logged -> logged.event().asSighting().stream())
                .anyMatch(sighting ->
                        !sighting.linesOfSight(begun.site(), begun.weather()).isEmpty());
        return situation.daylight() == Daylight.NONE || isSkySeen
                ? Optional.empty()
                : Optional.of(MistakenClockOrSite.darkening(begun, NightSteps.of(standing, begun), now));
    }

    /** The local horizon last set. */
    public Horizon horizon() {
        return horizonSet(standing).orElse(Horizon.OPEN);
    }

    /**
     * The local horizon set by the events of one night, if there was one.
     *
     * @param standing the events not withdrawn
     */
    public static Optional<Horizon> horizonSet(List<LoggedEvent> standing) {
        return standing.stream()
                .filter(logged -> logged.event() instanceof NightEvent.HorizonSet)
                .reduce((earlier, later) -> later)
                .map(logged -> ((NightEvent.HorizonSet) logged.event()).horizon());
    }

    private static Daylight daylight(ObservingMoment moment) {
        SunGuard sun = SunGuard.at(moment);
        if (!sun.isSunUp()) {
            return Daylight.NONE;
        }
        double altitudeDeg = sun.sun().altitude().degrees();
        return altitudeDeg > LOWEST_SHADOW_DEG && altitudeDeg < HIGHEST_SHADOW_DEG
                ? Daylight.SHADOW
                : Daylight.NO_SHADOW;
    }

    /**
     * Cache of solved sightings by event, and of zones by work, so that a night that grows by one event does not
     * recompute the others.
     */
    public static final class ModelCache {
        private final Map<Key, Step.Sighted> steps = new HashMap<>();

        private final Map<ZoneKey, WorkZone> zones = new HashMap<>();

        private final Map<CentredKey, Optional<CentredStars>> centred = new HashMap<>();
        private Optional<Growing> growing = Optional.empty();
        private Optional<Counted> counted = Optional.empty();
        private Optional<EventsSoFar> events = Optional.empty();
        private Optional<EventsSoFar> stateAtKnock = Optional.empty();

        private record Key(long seq, Sighting sighting, NightEvent.Begun begun) {
            // Hashing a sighting would go through all its content, and two sightings rarely share a number.
            @Override
            public int hashCode() {
                return Long.hashCode(seq);
            }
        }

        private record CentredKey(List<CentredStar> stars, NightEvent.Begun begun) {
            @Override
            public int hashCode() {
                return 31 * stars.size() + stars.get(0).at().hashCode();
            }
        }

        private record Counted(List<LoggedEvent> events, List<LoggedEvent> meant, Optional<LoggedEvent> lastUndoable) {
            static Counted of(List<LoggedEvent> night) {
                StandingEvents standing = StandingEvents.among(night);
                return new Counted(joined(night, List.of()), standing.asMeant(), standing.lastUndoable());
            }

            /** The night with more events; most do not change the meaning of earlier ones. */
            Counted followedBy(List<LoggedEvent> night) {
                List<LoggedEvent> more = night.subList(events.size(), night.size());
                if (more.isEmpty()) {
                    return this;
                }
                return events.isEmpty()
                                || more.stream().anyMatch(logged -> StandingEvents.changesOthers(logged.event()))
                        ? of(night)
                        : new Counted(
                                joined(events, more), joined(meant, more), Optional.of(more.get(more.size() - 1)));
            }

            private static List<LoggedEvent> joined(List<LoggedEvent> some, List<LoggedEvent> more) {
                List<LoggedEvent> all = new ArrayList<>(some.size() + more.size());
                all.addAll(some);
                all.addAll(more);
                return Collections.unmodifiableList(all);
            }
        }

        private Counted counted(List<LoggedEvent> night) {
            Counted now = counted.filter(cached -> NightContinuity.startsWith(cached.events(), night))
                    .map(cached -> cached.followedBy(night))
                    .orElseGet(() -> Counted.of(night));
            counted = Optional.of(now);
            return now;
        }

        /** The meaning of a night's events; new ones are added to those processed last. */
        private EventsSoFar soFar(List<LoggedEvent> standing, NightEvent.Begun begun) {
            EventsSoFar before = events.filter(cached -> cached.isContinuedBy(standing))
                    .or(() -> stateAtKnock
                            .filter(cached -> cached.isContinuedBy(standing))
                            .map(EventsSoFar::copy))
                    .orElseGet(() -> new EventsSoFar(begun));
            // If a new event is refused, the half-processed state must not remain.
            events = Optional.empty();
            stateAtKnock = before.addNew(standing, this).or(() -> stateAtKnock);
            events = Optional.of(before);
            return before.withLastCentrings(this);
        }

        private record Growing(NightEvent.Begun begun, GrowingFix fix) {}

        private Fix fix(NightEvent.Begun begun, List<Step> steps) {
            GrowingFix before = growing.filter(cached -> cached.begun().equals(begun))
                    .map(Growing::fix)
                    .orElseGet(() -> new GrowingFix(begun.site(), begun.rig(), begun.weather()));
            GrowingFix now = before.with(steps);
            growing = Optional.of(new Growing(begun, now));
            return now.fix();
        }

        /** The combined sighting from centred stars. */
        Optional<CentredStars> centred(List<CentredStar> stars, NightEvent.Begun begun) {
            if (stars.isEmpty()) {
                return Optional.empty();
            }
            return centred.computeIfAbsent(
                    new CentredKey(List.copyOf(stars), begun),
                    key -> CentredStars.of(begun.rig().kind(), begun.site(), begun.weather(), key.stars()));
        }

        private record ZoneKey(Work work, NightEvent.Begun begun) {
            @Override
            public int hashCode() {
                return work.hashCode();
            }
        }

        WorkZone zone(long seq, Work work, NightEvent.Begun begun) {
            return zones.computeIfAbsent(new ZoneKey(work, begun), key -> {
                ZoneOutcome outcome = ZoneFinder.find(begun.site(), begun.weather(), begun.rig(), work);
                if (outcome instanceof ZoneOutcome.Found found) {
                    return found.zone();
                }
                throw new InputRefused(
                        "event " + seq + " is work that no axis position suits", "undo it, or remove it from the file");
            });
        }

        Step.Sighted step(long seq, Sighting sighting, NightEvent.Begun begun) {
            return steps.computeIfAbsent(new Key(seq, sighting, begun), key -> {
                try {
                    return Step.Sighted.of(seq, sighting, begun.site(), begun.weather());
                } catch (InputRefused refused) {
                    throw refused.at("event " + seq);
                }
            });
        }
    }
}
