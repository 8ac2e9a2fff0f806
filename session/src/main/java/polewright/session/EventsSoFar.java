package polewright.session;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import polewright.alignment.advice.Confirmation;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.allowance.Allowance;
import polewright.alignment.fix.Agreement;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.Step;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.work.Work;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

/** The accumulated meaning of a night's events, event by event, before anything is solved. */
final class EventsSoFar {
    private final NightEvent.Begun begun;
    private final List<LoggedEvent> processed;
    private final List<Step> steps;
    private final Set<SightingKind> alreadyRead;
    private final CentringsSoFar centrings;
    // Events since the tripod was last set down: the index where they begin, and how often each instrument was read.
    private int setDown;
    private SharedInstrumentErrors settings = SharedInstrumentErrors.of(List.of());
    private Allowance allowance;
    private Optional<Work> work = Optional.empty();
    private boolean clamped;
    private boolean isTurnUnseen;
    private SkippedSightings skipped = SkippedSightings.NONE;
    private Optional<Long> lastSinceClamp = Optional.empty();

    EventsSoFar(NightEvent.Begun begun) {
        this.begun = begun;
        processed = new ArrayList<>();
        steps = new ArrayList<>();
        alreadyRead = EnumSet.noneOf(SightingKind.class);
        centrings = new CentringsSoFar();
        allowance = begun.allowance();
    }

    private EventsSoFar(EventsSoFar other, List<LoggedEvent> processed) {
        begun = other.begun;
        this.processed = processed;
        steps = new ArrayList<>(other.steps);
        alreadyRead = EnumSet.copyOf(other.alreadyRead);
        centrings = other.centrings.copy();
        setDown = other.setDown;
        settings = other.settings;
        allowance = other.allowance;
        work = other.work;
        clamped = other.clamped;
        isTurnUnseen = other.isTurnUnseen;
        skipped = other.skipped;
        lastSinceClamp = other.lastSinceClamp;
    }

    EventsSoFar copy() {
        return new EventsSoFar(this, new ArrayList<>(processed));
    }

    /** Whether a night begins with these events and all of them have the same meaning in it. */
    boolean isContinuedBy(List<LoggedEvent> standing) {
        if (!NightContinuity.startsWith(processed, standing)) {
            return false;
        }
        return standing.subList(processed.size(), standing.size()).stream().noneMatch(SharedInstrumentErrors::isRead)
                // A further reading of an instrument reduces the weight of the earlier ones.
                || sinceSetDown(standing).agreesWith(settings);
    }

    /**
     * Processes the events by which a night continues this one.
     *
     * @return the state at the last knock among them: later readings do not change the meaning of those before it
     */
    Optional<EventsSoFar> addNew(List<LoggedEvent> standing, NightState.ModelCache models) {
        Optional<EventsSoFar> stateAtKnock = Optional.empty();
        List<LoggedEvent> more = standing.subList(processed.size(), standing.size());
        if (more.stream().anyMatch(SharedInstrumentErrors::isRead)) {
            settings = sinceSetDown(standing);
        }
        for (LoggedEvent logged : more) {
            processed.add(logged);
            add(logged, models);
            if (logged.event() instanceof NightEvent.Knocked) {
                setDown = processed.size();
                EventsSoFar justSetDown = copy();
                justSetDown.settings = SharedInstrumentErrors.of(List.of());
                stateAtKnock = Optional.of(justSetDown);
            }
        }
        if (stateAtKnock.isPresent()) {
            settings = sinceSetDown(standing);
        }
        return stateAtKnock;
    }

    private SharedInstrumentErrors sinceSetDown(List<LoggedEvent> standing) {
        return SharedInstrumentErrors.of(standing.subList(setDown, standing.size()));
    }

    private void add(LoggedEvent logged, NightState.ModelCache models) {
        NightEvent event = logged.event();
        centrings.before(logged, begun, models).ifPresent(this::centred);
        steps.addAll(stepsOf(logged, models));
        clamped = NightSteps.isClampedAfter(event, clamped);
        skipped = skipped.after(logged);
        event.asSighting().ifPresent(sighting -> sighted(logged.seq(), sighting));
        if (event instanceof NightEvent.ScrewMove) {
            isTurnUnseen = true;
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

    /** If a sighting is impossible, the refusal names the clock or site that would have allowed it. */
    private List<Step> stepsOf(LoggedEvent logged, NightState.ModelCache models) {
        try {
            return NightSteps.of(logged, clamped, begun, settings, models);
        } catch (InputRefused refused) {
            throw logged.event()
                    .asSighting()
                    .flatMap(sighting -> MistakenClockOrSite.allowing(begun, steps, logged.seq(), sighting)
                            .words())
                    .map(words -> refused.adding("It would have been up if " + words + "."))
                    .orElse(refused);
        }
    }

    /** A copy that includes the stars centred since the last move. */
    EventsSoFar withLastCentrings(NightState.ModelCache models) {
        EventsSoFar all = new EventsSoFar(this, processed);
        centrings.current(begun, models).ifPresent(all::centred);
        return all;
    }

    private void centred(Step.Sighted together) {
        steps.add(together);
        sighted(together.seq(), together.sighting());
    }

    private void sighted(long seq, Sighting sighting) {
        Optional<SightingKind> reading = SharedInstrumentErrors.reading(sighting);
        reading.ifPresent(alreadyRead::add);
        if (reading.isEmpty()) {
            // Compass and scale are too coarse to confirm anything.
            lastSinceClamp = Optional.of(seq);
            isTurnUnseen = false;
        }
    }

    List<Step> steps() {
        return steps;
    }

    Set<SightingKind> alreadyRead() {
        return alreadyRead;
    }

    Allowance allowance() {
        return allowance;
    }

    Optional<Work> work() {
        return work;
    }

    boolean isClamped() {
        return clamped;
    }

    /** Whether a screw has been turned without a sighting of the sky since. */
    boolean isTurnUnseen() {
        return isTurnUnseen;
    }

    SkippedSightings skipped() {
        return skipped;
    }

    /** What has been observed since the clamps were tightened, by this fix. */
    Confirmation confirmation(Fix fix) {
        return lastSinceClamp
                .flatMap(fix::agreement)
                .map(Agreement::contradictory)
                .map(contradicts -> contradicts ? Confirmation.CONTRADICTS : Confirmation.AGREES)
                .orElse(Confirmation.NONE);
    }
}
