package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.Adviser;
import polewright.alignment.fix.Agreement;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.ScrewGains;
import polewright.alignment.fix.ScrewSenses;
import polewright.alignment.sighting.TurnedFrames;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.session.NightState;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** Where the axis points, in words. */
public final class FixWords {
    private static final double WORTH_TELLING_GAIN = 0.03;

    private FixWords() {}

    /** One line: {@code 30′ east and 29′ too low, give or take 4′ and 3′}. */
    public static String line(NightState night) {
        if (night.fix() instanceof Fix.Underdetermined under) {
            return capitalised(under.missing()) + ".";
        }
        if (night.fix().isInDispute()) {
            return "The axis points " + places(night.fix()) + ".";
        }
        AxisState state = night.fix().state();
        OffsetCovariance covariance = state.offsetCovariance();
        List<ScrewSenses.Otherwise> others = night.fix().otherPlaces();
        if (!others.isEmpty()) {
            return "The axis points " + eitherWay(state.offset(), others) + ", each ±" + sigma(covariance.sigmaEast())
                    + " sideways and ±" + sigma(covariance.sigmaUp())
                    + " in height, depending on which way the screws move it.";
        }
        return "The axis points " + direction(state.offset()) + ", give or take " + sigma(covariance.sigmaEast())
                + " sideways and " + sigma(covariance.sigmaUp()) + " in height.";
    }

    /** {@code 19′ too low (54 %), or 72′ too low (46 %)}: the axis before it is known which way a screw moved it. */
    private static String eitherWay(AxisOffset here, List<ScrewSenses.Otherwise> others) {
        double elsewhere =
                others.stream().mapToDouble(ScrewSenses.Otherwise::probability).sum();
        return direction(here) + " (" + AdviceWords.percent(1 - elsewhere) + ")"
                + others.stream()
                        .map(other -> ", or " + direction(other.offset()) + " ("
                                + AdviceWords.percent(other.probability()) + ")")
                        .collect(Collectors.joining());
    }

    /** An uncertainty is never nothing. */
    private static String sigma(Angle sigma) {
        return sigma.arcminutes() < 0.05 ? "under 0.1′" : AngleWords.size(sigma);
    }

    /**
     * The line, to stand above advice: none while the axis is not known, for then the advice's reason says what is
     * missing.
     */
    public static List<String> beforeAdvice(NightState night) {
        return night.fix() instanceof Fix.Underdetermined ? List.of() : List.of(line(night));
    }

    /** All that is known, several lines. */
    public static List<String> full(NightState night) {
        List<String> lines = new ArrayList<>();
        AxisState state = night.fix().state();
        Site site = night.begun().site();
        lines.add(line(night));
        // What follows is of one place.
        if (night.fix().isInDispute() || !night.fix().otherPlaces().isEmpty()) {
            lines.add(verdict(night));
        } else if (!(night.fix() instanceof Fix.Underdetermined)) {
            lines.add("From the " + pole(site) + " on the sky: "
                    + AngleWords.size(state.offset().distance()) + ". "
                    + verdict(night));
            lines.add("In azimuth (about the vertical) and altitude: "
                    + side(state.axis().azimuthError(site)) + ", "
                    + height(state.axis().altitudeError(site)) + ".");
            lines.addAll(gains(state.gains()));
            lines.addAll(ScrewWords.findings(state));
        }
        lines.addAll(doubts(night));
        return lines;
    }

    /** Yes or no, with the chance: {@code Not yet good enough for short subs (chance 3 %).} */
    private static String verdict(NightState night) {
        double chance = night.advice().probabilityNow();
        String no = night.advice() instanceof Advice.Stop ? "not " : "not yet ";
        // More likely than not is no plain no.
        String answer = chance >= Adviser.ENOUGH ? "" : chance > 0.5 ? "not surely " : no;
        return capitalised(answer + night.allowance().words()) + " (chance " + AdviceWords.percent(chance) + ").";
    }

    /** Why the fix is not to be trusted, if it is not; and one line for each sighting that was set aside. */
    public static List<String> doubts(NightState night) {
        List<String> lines = new ArrayList<>();
        if (night.fix() instanceof Fix.Dubious dubious) {
            lines.add("DOUBT " + dubious.reason() + ".");
        }
        lines.addAll(contradictions(night));
        return lines;
    }

    /** {@code 47′ east and 54′ too high (60 %), or 47′ west and 54′ too high (40 %)}: by explanations that do not agree. */
    private static String places(Fix fix) {
        return fix.explanations().stream()
                .filter(explanation -> explanation.weight() > Fix.WORTH_TELLING)
                .map(explanation -> direction(explanation.state().offset()) + " ("
                        + AdviceWords.percent(explanation.weight()) + ")")
                .collect(Collectors.joining(", or "));
    }

    /** One line for each sighting that was set aside. */
    public static List<String> contradictions(NightState night) {
        return night.fix().agreements().stream()
                .filter(Agreement::contradictory)
                .map(set -> contradiction(set, hasOthers(set, night.fix())))
                .toList();
    }

    /** {@code 30′ east and 29′ too low}, or {@code at the pole}. */
    public static String direction(AxisOffset offset) {
        // One unit for both: "3.9° east and 69′ too high" reads as 69 of something bigger.
        Angle larger = offset.east().abs().compareTo(offset.up().abs()) > 0 ? offset.east() : offset.up();
        String east =
                AngleWords.sizeLike(larger, offset.east()) + (offset.east().radians() >= 0 ? " east" : " west");
        String up = AngleWords.sizeLike(larger, offset.up()) + (offset.up().radians() >= 0 ? " too high" : " too low");
        return east + " and " + up;
    }

    static String pole(Site site) {
        return site.isNorthern() ? "north celestial pole" : "south celestial pole";
    }

    /** Whether anything else tells of the same direction; if not, it is the usual setting of a mount that it contradicts. */
    private static boolean hasOthers(Agreement agreement, Fix fix) {
        return fix.agreements().stream()
                .anyMatch(other -> other.seq() != agreement.seq() && other.tellsOfWhat(agreement));
    }

    private static String contradiction(Agreement agreement, boolean hasOthers) {
        String sigmas = String.format(Locale.ROOT, "%.0f", Math.sqrt(agreement.squaredInnovation()));
        return "CONTRADICTS #" + agreement.seq() + " (" + agreement.kind() + ") is " + sigmas
                + (hasOthers
                        ? " sigmas away from the rest, and is "
                                + (agreement.accused()
                                        ? "set aside."
                                        : "not used for now: it is wrong, or another entry is.")
                        : " sigmas from anywhere near the pole, and is set aside until another agrees with it.")
                + agreement
                        .likelyCause()
                        .map(cause -> " It would fit if " + cause + ".")
                        .orElse(
                                agreement.kind().equals(TurnedFrames.KIND)
                                        ? " Check the clock, and that nothing but right ascension was turned between the"
                                                + " frames; take them again."
                                        : " Check the star, the time and the view; take it again.");
    }

    private static List<String> gains(ScrewGains gains) {
        List<String> lines = new ArrayList<>();
        addGain(lines, "azimuth", gains.azimuthFactor(), gains.azimuthSigma());
        addGain(lines, "altitude", gains.altitudeFactor(), gains.altitudeSigma());
        return lines;
    }

    private static void addGain(List<String> lines, String screw, double factor, double sigma) {
        if (Math.abs(factor - 1) > Math.max(WORTH_TELLING_GAIN, sigma)) {
            lines.add(String.format(
                    Locale.ROOT,
                    "Learned: the %s screw does %.0f %% of what the rig says, give or take %.0f %%.",
                    screw,
                    100 * factor,
                    100 * sigma));
        }
    }

    private static String side(Angle azimuthError) {
        return AngleWords.size(azimuthError) + (azimuthError.radians() >= 0 ? " right" : " left");
    }

    private static String height(Angle altitudeError) {
        return AngleWords.size(altitudeError) + (altitudeError.radians() >= 0 ? " high" : " low");
    }

    private static String capitalised(String sentence) {
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }
}
