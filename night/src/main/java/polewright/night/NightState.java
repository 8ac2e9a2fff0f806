package polewright.night;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import polewright.axis.advice.Advice;
import polewright.axis.advice.Adviser;
import polewright.axis.advice.Confirmation;
import polewright.axis.advice.Daylight;
import polewright.axis.advice.SightingKind;
import polewright.axis.advice.Situation;
import polewright.axis.allowance.Allowance;
import polewright.axis.allowance.WorkZone;
import polewright.axis.allowance.ZoneFinder;
import polewright.axis.allowance.ZoneOutcome;
import polewright.axis.fix.Fix;
import polewright.axis.fix.FixSolver;
import polewright.axis.fix.Step;
import polewright.axis.pointing.CentredStar;
import polewright.axis.sighting.CentredStars;
import polewright.axis.sighting.Sighting;
import polewright.axis.work.Work;
import polewright.night.event.LoggedEvent;
import polewright.night.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.body.SunGuard;
import polewright.sky.place.Horizon;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.SkyTime;

/**
 * What a night's events come to: a pure function of them.
 *
 * @param begun how the night began
 * @param fix where the axis points
 * @param work what tonight is for, if that was told; then it says what is tolerated
 * @param allowance what is tolerated now
 * @param clamped whether the clamps are tight
 * @param situation what the advice depends on: for asking the adviser more
 * @param advice what to do next
 * @param standing the events that have not been withdrawn, in order, turns as they were corrected
 * @param lastUndoable the last event that could be taken back, if there is one
 * @param now when it is so
 */
public record NightState(
        NightEvent.Begun begun,
        Fix fix,
        Optional<Work> work,
        Allowance allowance,
        boolean clamped,
        Situation situation,
        Advice advice,
        List<LoggedEvent> standing,
        Optional<LoggedEvent> lastUndoable,
        Instant now) {
    // A lower Sun throws a faint shadow that runs off the ground; a higher one a stub whose direction races.
    private static final double LOWEST_SHADOW_DEG = 5;
    private static final double HIGHEST_SHADOW_DEG = 70;

    /**
     * The state that these events lead to, with advice for the time of the last of them.
     *
     * @throws InputRefused when the events do not begin with a beginning, or a sighting among them cannot have been
     *     made; its event number is named
     */
    public static NightState of(List<LoggedEvent> events) {
        return of(
                events,
                events.isEmpty() ? Instant.EPOCH : events.get(events.size() - 1).at(),
                new ModelCache());
    }

    /**
     * The same with advice for another time, sharing worked-out sightings between calls on a growing night.
     *
     * @param now whether it is day or night decides what can be sighted next
     */
    public static NightState of(List<LoggedEvent> events, Instant now, ModelCache models) {
        StandingEvents counting = StandingEvents.among(events);
        List<LoggedEvent> standing = counting.asMeant();
        if (standing.isEmpty() || !(standing.get(0).event() instanceof NightEvent.Begun begun)) {
            throw new InputRefused("the night has no beginning", "start it with: polewright begin --site LAT,LON");
        }
        Folding folding = new Folding(begun, SettingsDown.of(standing), models);
        standing.forEach(folding::add);
        folding.finish();
        Fix fix = models.fix(begun, folding.steps);
        ObservingMoment moment = ObservingMoment.of(begun.site(), SkyTime.of(now), begun.weather());
        Daylight daylight = daylight(moment);
        Situation situation = new Situation(
                begun.rig(),
                fix,
                folding.allowance,
                folding.clamped,
                folding.confirmation(fix),
                folding.alreadyRead,
                daylight,
                // By day no star is offered at all: whoever sweeps for one may sweep across the Sun.
                daylight == Daylight.NONE ? BrightStars.upAt(moment) : List.of());
        return new NightState(
                begun,
                fix,
                folding.work,
                folding.allowance,
                folding.clamped,
                situation,
                Adviser.advise(situation),
                standing,
                counting.lastUndoable(),
                now);
    }

    /**
     * Where these events leave the axis, and nothing else: no advice is worked out.
     *
     * @param standing events that have not been withdrawn, the beginning first
     * @throws InputRefused when a sighting among them cannot have been made; its event number is named
     */
    public static Fix fixOf(List<LoggedEvent> standing) {
        if (standing.isEmpty() || !(standing.get(0).event() instanceof NightEvent.Begun begun)) {
            throw new InputRefused("the night has no beginning", "start it with: polewright begin --site LAT,LON");
        }
        return FixSolver.solve(begun.site(), begun.rig(), begun.weather(), NightSteps.of(standing, begun));
    }

    /** What hides the sky round the site, as it was last told. */
    public Horizon horizon() {
        return toldHorizon(standing).orElse(Horizon.OPEN);
    }

    /**
     * What hides the sky round the site by the events of one night, if it was told.
     *
     * @param standing the events that have not been withdrawn
     */
    public static Optional<Horizon> toldHorizon(List<LoggedEvent> standing) {
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

    /** What the events so far come to, event by event. */
    private static final class Folding {
        private final NightEvent.Begun begun;
        private final SettingsDown settings;
        private final ModelCache models;
        private final List<Step> steps = new ArrayList<>();
        private final Set<SightingKind> alreadyRead = EnumSet.noneOf(SightingKind.class);
        private final CentringsSoFar centrings = new CentringsSoFar();
        private Allowance allowance;
        private Optional<Work> work = Optional.empty();
        private boolean clamped;
        private Optional<Long> lastSinceClamp = Optional.empty();

        private Folding(NightEvent.Begun begun, SettingsDown settings, ModelCache models) {
            this.begun = begun;
            this.settings = settings;
            this.models = models;
            this.allowance = begun.allowance();
        }

        private void add(LoggedEvent logged) {
            NightEvent event = logged.event();
            centrings.before(logged, begun, models).ifPresent(this::centred);
            steps.addAll(NightSteps.of(logged, clamped, begun, settings, models));
            clamped = NightSteps.isClampedAfter(event, clamped);
            if (event instanceof NightEvent.SightingTaken taken) {
                sighted(logged.seq(), taken.sighting());
            } else if (event instanceof NightEvent.Clamped) {
                lastSinceClamp = Optional.empty();
            } else if (event instanceof NightEvent.Knocked) {
                alreadyRead.clear();
                lastSinceClamp = Optional.empty();
            } else if (event instanceof NightEvent.AllowanceSet set) {
                allowance = set.allowance();
                work = Optional.empty();
            } else if (event instanceof NightEvent.WorkSet set) {
                allowance = models.zone(logged.seq(), set.work(), begun);
                work = Optional.of(set.work());
            }
        }

        private void finish() {
            centrings.atLast(begun, models).ifPresent(this::centred);
        }

        private void centred(Step.Sighted together) {
            steps.add(together);
            sighted(together.seq(), together.sighting());
        }

        private void sighted(long seq, Sighting sighting) {
            Optional<SightingKind> reading = SettingsDown.reading(sighting);
            reading.ifPresent(alreadyRead::add);
            if (reading.isEmpty()) {
                // Compass and scale are too rough to confirm anything by.
                lastSinceClamp = Optional.of(seq);
            }
        }

        private Confirmation confirmation(Fix fix) {
            return lastSinceClamp
                    .flatMap(fix::agreement)
                    .map(a -> a.contradictory() ? Confirmation.CONTRADICTS : Confirmation.AGREES)
                    .orElse(Confirmation.NONE);
        }
    }

    /** Worked-out sightings by event, and zones by work, so that a night that grows by one does not work out the others again. */
    public static final class ModelCache {
        private final Map<Key, Step.Sighted> steps = new HashMap<>();

        private final Map<ZoneKey, WorkZone> zones = new HashMap<>();

        private final Map<CentredKey, Optional<CentredStars>> centred = new HashMap<>();
        private Optional<SolvedSteps> last = Optional.empty();

        private record Key(long seq, Sighting sighting, NightEvent.Begun begun) {
            // A sighting's own hash goes through all of it, and hardly ever two have one number.
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

        private record SolvedSteps(NightEvent.Begun begun, List<Step> steps, Fix fix) {}

        /** Most events say nothing of the axis: then it is where it was. */
        private Fix fix(NightEvent.Begun begun, List<Step> steps) {
            if (last.isEmpty()
                    || !last.get().begun().equals(begun)
                    || !last.get().steps().equals(steps)) {
                List<Step> kept = List.copyOf(steps);
                last = Optional.of(new SolvedSteps(
                        begun, kept, FixSolver.solve(begun.site(), begun.rig(), begun.weather(), kept)));
            }
            return last.get().fix();
        }

        /** What centred stars come to together. */
        Optional<CentredStars> centred(List<CentredStar> stars, NightEvent.Begun begun) {
            if (stars.isEmpty()) {
                return Optional.empty();
            }
            return centred.computeIfAbsent(
                    new CentredKey(List.copyOf(stars), begun),
                    key -> CentredStars.of(begun.rig().kind(), begun.site(), begun.weather(), key.stars()));
        }

        private record ZoneKey(Work work, NightEvent.Begun begun) {}

        private WorkZone zone(long seq, Work work, NightEvent.Begun begun) {
            return zones.computeIfAbsent(new ZoneKey(work, begun), key -> {
                ZoneOutcome outcome = ZoneFinder.find(begun.site(), begun.weather(), begun.rig(), work);
                if (outcome instanceof ZoneOutcome.Found found) {
                    return found.zone();
                }
                throw new InputRefused(
                        "event " + seq + " is work that no axis suits", "undo it, or take it out of the file");
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
