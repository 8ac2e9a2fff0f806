package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import polewright.alignment.advice.Advice;
import polewright.alignment.sighting.SightingFormat;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.simulation.Photograph;
import polewright.simulation.RehearsedNight;

/** The additional text of a rehearsed night: its frames as they are taken, and at the end the truth. */
public final class SimulationWords {
    private SimulationWords() {}

    /**
     * The frames that led to an event, then the event with fix and advice, ending with an empty line.
     *
     * @param photographs taken since the previous event
     */
    public static List<String> moment(RehearsedNight.Moment moment, List<Photograph> photographs) {
        List<String> lines = new ArrayList<>();
        if (moment.look().isEmpty()) {
            photographs.forEach(photograph -> lines.add(frame(photograph)));
        }
        List<String> event = NightWords.afterEvent(
                moment.event(), moment.night(), moment.night().standing());
        if (moment.isAdviceFollowed()) {
            lines.addAll(event);
            return lines;
        }
        // A rehearsal first logs the night's work.
        lines.add(
                moment.event().event() instanceof NightEvent.Begun begun
                        ? NightWords.heading(moment.event(), EventWords.begun(begun))
                        : event.get(0));
        moment.look().ifPresent(look -> {
            lines.add("  FRAME A new frame shows the turns that remain:");
            lines.add("        " + FrameWords.both(look.screws().orders()) + ".");
            WatchWords.wrongWays(look.screws().azimuthWentWrong(), look.screws().altitudeWentWrong())
                    .forEach(line -> lines.add("        " + line));
        });
        lines.add("");
        return lines;
    }

    private static String frame(Photograph photograph) {
        return "FRAME " + AxisWords.clock(photograph.attitude().at()) + ": "
                + photograph.match().starsMatched() + " of "
                + photograph.match().starsFound() + " stars matched.";
    }

    /** The hidden truth compared with the result. */
    public static List<String> truth(List<RehearsedNight.Moment> night) {
        List<String> lines = new ArrayList<>();
        lines.add("THE TRUTH");
        AxisOffset first = night.get(0).wedge().offset();
        lines.add("  at first  " + AxisWords.direction(first) + " (" + AxisWords.fine(first.distance()) + " off)");
        RehearsedNight.Moment last = night.get(night.size() - 1);
        AxisOffset now = last.wedge().offset();
        lines.add("  now       " + AxisWords.direction(now) + " (" + AxisWords.fine(now.distance()) + " off)");
        lines.add(
                "  the fix   " + AxisWords.direction(last.night().fix().state().offset()));
        lines.add("            error " + error(last));
        night.stream()
                .filter(SimulationWords::toldByFrames)
                .findFirst()
                .ifPresent(moment -> lines.add("  frames    error of the first three " + error(moment)));
        lines.add("  " + verdict(last.night(), now));
        return lines;
    }

    private static boolean toldByFrames(RehearsedNight.Moment moment) {
        return moment.event()
                .event()
                .asSighting()
                .filter(sighting -> sighting.format() == SightingFormat.FRAMES)
                .isPresent();
    }

    /** {@code 6″; stated uncertainty 7″}. */
    private static String error(RehearsedNight.Moment moment) {
        OffsetCovariance covariance = moment.night().fix().state().offsetCovariance();
        AxisOffset wrong =
                moment.night().fix().state().offset().minus(moment.wedge().offset());
        return AxisWords.fine(wrong.distance()) + "; stated uncertainty " + AxisWords.fine(covariance.largestSigma());
    }

    private static String verdict(NightState state, AxisOffset truth) {
        boolean within = state.allowance().contains(truth);
        if (!(state.advice() instanceof Advice.Stop)) {
            return "Not finished: after " + state.standing().size() + " events the advice had not yet said stop. The"
                    + " axis is " + (within ? "within" : "outside") + " the allowance.";
        }
        return within
                ? "Within the allowance: good enough."
                : "Outside the allowance: one of the few that the quoted chance leaves.";
    }
}
