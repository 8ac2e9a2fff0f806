package polewright.planning.seasons;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import polewright.alignment.advice.Advice;
import polewright.alignment.fix.Agreement;
import polewright.alignment.fix.Fix;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.SightingFormat;
import polewright.mount.OffsetCovariance;
import polewright.session.NightId;
import polewright.session.NightState;
import polewright.session.StandingEvents;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

/**
 * The outcome of one night.
 *
 * @param id its number in the log
 * @param begunAt entry time of its first event
 * @param begun its beginning
 * @param axisAtStart the axis at the start from sightings before anything was turned; empty if they do not determine it
 * @param axisAtEnd the axis at the end; empty if unknown or in doubt
 * @param sightings number of sightings used, by kind
 * @param turns number of times screws were turned
 * @param isMoved whether anything moved the axis: screws, clamps, a knock
 * @param isSightedAfterMove whether it was sighted after the first such move; if not, {@code axisAtStart} and
 *     {@code axisAtEnd} share their error
 * @param taken from the first event to the advice to stop, or to the last event if it was not given
 * @param isStopped whether the advice to stop was given
 * @param contradictions the sightings that were set aside
 */
public record NightRecord(
        NightId id,
        Instant begunAt,
        NightEvent.Begun begun,
        Optional<AxisAtTime> axisAtStart,
        Optional<AxisAtTime> axisAtEnd,
        Map<String, Integer> sightings,
        int turns,
        boolean isMoved,
        boolean isSightedAfterMove,
        Duration taken,
        boolean isStopped,
        List<Agreement> contradictions) {
    private static final String CENTRED = "centred star";

    public NightRecord {
        sightings = Collections.unmodifiableMap(new TreeMap<>(sightings));
        contradictions = List.copyOf(contradictions);
    }

    /**
     * The outcome of these events.
     *
     * @param events of one night, including withdrawn ones
     * @throws InputRefused if they have no beginning, or if a sighting among them is impossible
     */
    public static NightRecord of(NightId id, List<LoggedEvent> events) {
        List<LoggedEvent> standing = StandingEvents.among(events).asMeant();
        Fix fix = NightState.fixOf(standing);
        NightEvent.Begun begun = (NightEvent.Begun) standing.get(0).event();
        int firstMove = firstMove(standing);
        Optional<LoggedEvent> stop = stop(standing);
        LoggedEvent end = stop.orElse(standing.get(standing.size() - 1));
        return new NightRecord(
                id,
                standing.get(0).at(),
                begun,
                axisAtStart(standing, firstMove, begun),
                axisThen(fix, standing),
                sightings(standing),
                (int) standing.stream().filter(e -> isTurn(e.event())).count(),
                firstMove < standing.size(),
                standing.subList(firstMove, standing.size()).stream().anyMatch(e -> isSighting(e.event())),
                Duration.between(standing.get(0).at(), end.at()),
                stop.isPresent(),
                fix.agreements().stream().filter(Agreement::contradictory).toList());
    }

    /** Whether the night neither measured nor changed the axis, so that it can be ignored. */
    boolean isSilent() {
        return axisAtStart.isEmpty() && axisAtEnd.isEmpty() && !isMoved;
    }

    private static Optional<AxisAtTime> axisAtStart(List<LoggedEvent> standing, int firstMove, NightEvent.Begun begun) {
        List<LoggedEvent> untouched = standing.subList(0, firstMove);
        Optional<AxisAtTime> before = axisThen(NightState.fixOf(untouched), untouched);
        if (before.isPresent()) {
            return before;
        }
        // If clamps were loosened before the first sighting, the axis has shifted only by as much as clamps do.
        int firstTurn = firstOf(standing, NightRecord::isTurnOrKnock);
        List<LoggedEvent> unturned = standing.subList(0, firstTurn);
        long clampings = unturned.stream().filter(e -> isClamping(e.event())).count();
        double sigma = begun.rig().clampingSigma().arcminutes();
        double variance = clampings * sigma * sigma;
        return axisThen(NightState.fixOf(unturned), unturned)
                .map(then -> new AxisAtTime(
                        then.at(), then.offset(), then.covariance().plus(new OffsetCovariance(variance, 0, variance))));
    }

    /** The axis of the fix, unless it is unknown or in doubt. */
    private static Optional<AxisAtTime> axisThen(Fix fix, List<LoggedEvent> standing) {
        boolean isKnown = fix instanceof Fix.Solved
                || (fix instanceof Fix.Dubious dubious && dubious.dispute() == Fix.Dispute.WHAT_HAPPENED);
        return standing.stream()
                .filter(e -> isKnown && isSighting(e.event()))
                .map(NightRecord::seenAt)
                .reduce((earlier, later) -> later.isAfter(earlier) ? later : earlier)
                .map(at -> new AxisAtTime(at, fix.state().offset(), fix.state().offsetCovariance()));
    }

    private static Instant seenAt(LoggedEvent logged) {
        return logged.event().asSighting().map(Sighting::at).orElse(logged.at());
    }

    /** The event after which the advice was to stop for the first time. */
    private static Optional<LoggedEvent> stop(List<LoggedEvent> standing) {
        NightState.ModelCache models = new NightState.ModelCache();
        boolean isConfirming = false;
        for (int i = 0; i < standing.size(); i++) {
            LoggedEvent logged = standing.get(i);
            if (isClamping(logged.event()) || isTurnOrKnock(logged.event())) {
                isConfirming = logged.event() instanceof NightEvent.Clamped;
            } else if (isConfirming
                    && mayConfirm(logged.event())
                    && NightState.of(standing.subList(0, i + 1), logged.at(), models)
                                    .advice()
                            instanceof Advice.Stop) {
                return Optional.of(logged);
            }
        }
        return Optional.empty();
    }

    /** Advice to stop follows a sighting of the sky with the clamps tight, or a new tolerance after one. */
    private static boolean mayConfirm(NightEvent event) {
        boolean isRough = event.asSighting()
                .map(Sighting::format)
                .filter(format -> format == SightingFormat.COMPASS || format == SightingFormat.SCALE)
                .isPresent();
        return (isSighting(event) && !isRough)
                || event instanceof NightEvent.AllowanceSet
                || event instanceof NightEvent.WorkSet;
    }

    private static Map<String, Integer> sightings(List<LoggedEvent> standing) {
        Map<String, Integer> sightings = new TreeMap<>();
        List<String> kinds = new ArrayList<>();
        standing.forEach(logged -> {
            logged.event().asSighting().map(Sighting::kind).ifPresent(kinds::add);
            if (logged.event() instanceof NightEvent.StarCentred) {
                kinds.add(CENTRED);
            }
        });
        kinds.forEach(kind -> sightings.merge(kind, 1, Integer::sum));
        return sightings;
    }

    private static int firstMove(List<LoggedEvent> standing) {
        return firstOf(standing, event -> isTurnOrKnock(event) || isClamping(event));
    }

    private static int firstOf(List<LoggedEvent> standing, java.util.function.Predicate<NightEvent> wanted) {
        int first = 0;
        while (first < standing.size() && !wanted.test(standing.get(first).event())) {
            first++;
        }
        return first;
    }

    private static boolean isSighting(NightEvent event) {
        return event instanceof NightEvent.Measurement;
    }

    private static boolean isTurn(NightEvent event) {
        return event instanceof NightEvent.ScrewMove;
    }

    private static boolean isTurnOrKnock(NightEvent event) {
        return event.movesAxisFar();
    }

    private static boolean isClamping(NightEvent event) {
        return event instanceof NightEvent.Clamped || event instanceof NightEvent.Unclamped;
    }
}
