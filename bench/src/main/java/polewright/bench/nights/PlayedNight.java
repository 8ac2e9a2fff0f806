package polewright.bench.nights;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import polewright.alignment.advice.Advice;
import polewright.alignment.allowance.Allowance;
import polewright.mount.AxisOffset;
import polewright.session.event.NightEvent;
import polewright.simulation.HiddenWedge;
import polewright.simulation.PlainRoutine;
import polewright.simulation.RehearsedNight;

/**
 * A night as it was played, by either player.
 *
 * @param beats everything that was done
 * @param stopped whether the player concluded that the axis is good enough
 */
record PlayedNight(List<Beat> beats, boolean stopped) {
    /**
     * An action.
     *
     * @param adjusts whether it moved the axis on purpose
     * @param offset true axis offset then
     * @param good whether that is good enough
     */
    record Beat(Instant at, String words, boolean adjusts, AxisOffset offset, boolean good) {
        private static Beat of(Instant at, String words, boolean adjusts, HiddenWedge wedge, Allowance zone) {
            return new Beat(at, words, adjusts, wedge.offset(), zone.contains(wedge.offset()));
        }
    }

    static PlayedNight advised(List<RehearsedNight.Moment> moments, Allowance zone) {
        List<Beat> beats = moments.stream()
                .map(m -> Beat.of(
                        m.event().at(),
                        EventInWords.of(m),
                        m.event().event() instanceof NightEvent.ScrewsTurned
                                || m.event().event() instanceof NightEvent.Knocked,
                        m.wedge(),
                        zone))
                .toList();
        Advice last = moments.get(moments.size() - 1).night().advice();
        return new PlayedNight(beats, last instanceof Advice.Stop);
    }

    static PlayedNight plain(List<PlainRoutine.Moment> moments, Allowance zone) {
        List<Beat> beats = moments.stream()
                .map(m -> Beat.of(
                        m.at(),
                        m.words(),
                        m.act() == PlainRoutine.Act.TURNED || m.act() == PlainRoutine.Act.MOVED_BY_HAND,
                        m.wedge(),
                        zone))
                .toList();
        return new PlayedNight(beats, moments.get(moments.size() - 1).act() == PlainRoutine.Act.STOPPED);
    }

    /** From the first to the stop; infinite if there was none. */
    double minutes() {
        return stopped ? minutesAt(beats.size() - 1) : Double.POSITIVE_INFINITY;
    }

    /** Until the axis truly was good enough for the first time, for however long. */
    double minutesUntilGood() {
        for (int i = 0; i < beats.size(); i++) {
            if (beats.get(i).good()) {
                return minutesAt(i);
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    /** How long the axis had been good enough, without a break, when the player stopped; 0 if it was not. */
    double needlessMinutes() {
        int since = beats.size();
        while (since > 0 && beats.get(since - 1).good()) {
            since--;
        }
        return since == beats.size() ? 0 : minutesAt(beats.size() - 1) - minutesAt(since);
    }

    boolean isFalseStop() {
        return stopped && !beats.get(beats.size() - 1).good();
    }

    /** Visits to the screws, and moves of the mount by hand; turns without a sighting between them count as one. */
    int adjustments() {
        return adjustments(false);
    }

    /** How many of those began with an axis that was good enough. */
    int needlessAdjustments() {
        return adjustments(true);
    }

    private int adjustments(boolean onlyGood) {
        int count = 0;
        for (int i = 1; i < beats.size(); i++) {
            boolean begins = beats.get(i).adjusts() && !beats.get(i - 1).adjusts();
            if (begins && (!onlyGood || beats.get(i - 1).good())) {
                count++;
            }
        }
        return count;
    }

    /** A line for everything that was done, with the truth next to it. */
    List<String> lines() {
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < beats.size(); i++) {
            Beat beat = beats.get(i);
            lines.add(String.format(
                    Locale.ROOT,
                    "%6.1f min  %s  truly %7.1f' east %7.1f' up   %s",
                    minutesAt(i),
                    beat.good() ? "good" : "    ",
                    beat.offset().east().arcminutes(),
                    beat.offset().up().arcminutes(),
                    beat.words()));
        }
        lines.add(stopped ? "stopped" : "never stopped");
        return lines;
    }

    private double minutesAt(int beat) {
        return Duration.between(beats.get(0).at(), beats.get(beat).at()).toMillis() / 60000.0;
    }
}
