package polewright.report.text;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import polewright.alignment.fix.Agreement;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.Explanation;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.ScrewGains;
import polewright.alignment.fix.ScrewSenses;
import polewright.alignment.sighting.TurnedFrames;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.session.NightState;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** The fix in words. */
public final class FixWords {
    private static final double WORTH_TELLING_GAIN = 0.03;
    // A smaller factor is not significant.
    private static final double WORTH_SAYING_SCATTER = 1.3;

    private static final double IN_DEGREES_ARCMIN = 99.5;
    private static final double COARSE_DEG = 0.1;
    private static final double LEAST_DEG = 0.1;
    private static final double LEAST_ARCMIN = 0.1;

    private FixWords() {}

    /** One line: {@code Axis: 30′ east, 29′ low (±4.0′ east–west, ±3.0′ up–down).} */
    public static String line(NightState night) {
        if (night.fix() instanceof Fix.Underdetermined under) {
            return capitalised(under.missing()) + ".";
        }
        if (night.fix().isInDispute()) {
            return "Axis: " + places(night.fix()) + ".";
        }
        AxisState state = night.fix().state();
        OffsetCovariance covariance = state.offsetCovariance();
        List<ScrewSenses.Otherwise> others = night.fix().otherPlaces();
        if (!others.isEmpty()) {
            return "Axis: " + eitherWay(state.offset(), others) + ". Each is "
                    + plusMinus(sigma(covariance.sigmaEast()), sigma(covariance.sigmaUp()))
                    + "; it depends on which way the screws move the axis.";
        }
        return "Axis: " + withUncertainty(state.offset(), covariance) + ".";
    }

    /** {@code 47′ east, 54′ high (±108′ east–west, ±60′ up–down)}: one unit throughout. */
    static String withUncertainty(AxisOffset offset, OffsetCovariance covariance) {
        Angle larger = larger(offset);
        // In degrees only if that is fine enough for the uncertainty too.
        boolean inDegrees = larger.abs().arcminutes() >= IN_DEGREES_ARCMIN
                && covariance.largestSigma().degrees() >= COARSE_DEG;
        Function<Angle, String> figure = inDegrees ? AngleWords::degrees : FixWords::arcminutes;
        Function<Angle, String> sigma =
                angle -> figure.apply(inDegrees ? atLeast(angle, LEAST_DEG) : atLeast(angle, LEAST_ARCMIN / 60));
        return figure.apply(offset.east().abs()) + eastOrWest(offset) + ", "
                + figure.apply(offset.up().abs()) + highOrLow(offset) + " ("
                + plusMinus(sigma.apply(covariance.sigmaEast()), sigma.apply(covariance.sigmaUp())) + ")";
    }

    /** {@code ±2′}, or with the directions where they differ. */
    static String plusMinus(String east, String up) {
        return east.equals(up) ? "±" + east : "±" + east + " east–west, ±" + up + " up–down";
    }

    private static Angle atLeast(Angle angle, double degrees) {
        return Angle.ofDegrees(Math.max(angle.degrees(), degrees));
    }

    private static String arcminutes(Angle angle) {
        double size = Math.abs(angle.arcminutes());
        return size < 0.05 ? "0′" : String.format(Locale.ROOT, size >= 9.95 ? "%.0f′" : "%.1f′", size);
    }

    /** {@code 19′ low (54 %) or 72′ low (46 %)}: the axis before the direction of a screw is known. */
    private static String eitherWay(AxisOffset here, List<ScrewSenses.Otherwise> others) {
        double elsewhere =
                others.stream().mapToDouble(ScrewSenses.Otherwise::probability).sum();
        List<AxisOffset> all = new ArrayList<>(List.of(here));
        others.forEach(other -> all.add(other.offset()));
        Angle largest = largest(all);
        return direction(here, largest) + " (" + AdviceWords.percent(1 - elsewhere) + ")"
                + others.stream()
                        .map(other -> " or " + direction(other.offset(), largest) + " ("
                                + AdviceWords.percent(other.probability()) + ")")
                        .collect(Collectors.joining());
    }

    /** An uncertainty is never shown as zero. */
    private static String sigma(Angle sigma) {
        return AngleWords.size(atLeast(sigma, LEAST_ARCMIN / 60));
    }

    /** The line above advice: omitted without a fix, because the advice's reason then says what is missing. */
    public static List<String> beforeAdvice(NightState night) {
        return !night.fix().isDetermined() ? List.of() : List.of(line(night));
    }

    /** All that is known, several lines. */
    public static List<Line> full(NightState night) {
        List<String> plain = new ArrayList<>();
        AxisState state = night.fix().state();
        Site site = night.begun().site();
        plain.add(line(night));
        // What follows applies to one position.
        if (night.fix().isInDispute() || !night.fix().otherPlaces().isEmpty()) {
            plain.add(verdict(night));
        } else if (night.fix().isDetermined()) {
            plain.add(AngleWords.size(state.offset().distance()) + " from the " + pole(site) + ". " + verdict(night));
            plain.add(azimuthAndAltitude(
                    state.axis().azimuthError(site), state.axis().altitudeError(site)));
            plain.addAll(gains(state.gains()));
            plain.addAll(ScrewWords.findings(state));
        }
        scatter(night.fix()).ifPresent(plain::add);
        List<Line> lines = new ArrayList<>(Tag.PLAIN.lines(plain));
        lines.addAll(doubts(night));
        return lines;
    }

    /** {@code Tonight's sky readings scatter 1.6 times as much as stated; the uncertainties include this.} */
    private static Optional<String> scatter(Fix fix) {
        return fix.scatter() < WORTH_SAYING_SCATTER
                ? Optional.empty()
                : Optional.of(String.format(
                        Locale.ROOT,
                        "Tonight's sky readings scatter %.1f times as much as stated; the uncertainties include this.",
                        fix.scatter()));
    }

    /** {@code Chance of being good enough for short subs: 3 %.} */
    private static String verdict(NightState night) {
        return "Chance of being " + night.allowance().words() + ": "
                + AdviceWords.percent(night.advice().probabilityNow()) + ".";
    }

    /** Why the fix is not reliable, if it is not; and one line for each outlier. */
    public static List<Line> doubts(NightState night) {
        List<Line> lines = new ArrayList<>();
        if (night.fix() instanceof Fix.Dubious dubious) {
            lines.add(Tag.DOUBT.line(dubious.reason() + "."));
        }
        lines.addAll(Tag.PLAIN.lines(contradictions(night)));
        return lines;
    }

    /** {@code 47′ east, 54′ high (60 %) or 47′ west, 54′ high (40 %)}: from contradictory explanations. */
    private static String places(Fix fix) {
        List<Explanation> worth = fix.explanations().stream()
                .filter(explanation -> explanation.weight() > Fix.WORTH_REPORTING)
                .toList();
        Angle largest = largest(
                worth.stream().map(explanation -> explanation.state().offset()).toList());
        return worth.stream()
                .map(explanation -> direction(explanation.state().offset(), largest) + " ("
                        + AdviceWords.percent(explanation.weight()) + ")")
                .collect(Collectors.joining(" or "));
    }

    /** One line for each outlier. */
    public static List<String> contradictions(NightState night) {
        return night.fix().agreements().stream()
                .filter(Agreement::contradictory)
                .map(set -> contradiction(set, hasOthers(set, night.fix())))
                .toList();
    }

    /** {@code 30′ east, 29′ low}. */
    public static String direction(AxisOffset offset) {
        return direction(offset, larger(offset));
    }

    /** In the unit that suits the largest angle of a sentence: "3.9° east, 69′ high" makes 69 look larger. */
    private static String direction(AxisOffset offset, Angle largest) {
        return AngleWords.sizeLike(largest, offset.east()) + eastOrWest(offset) + ", "
                + AngleWords.sizeLike(largest, offset.up()) + highOrLow(offset);
    }

    private static Angle largest(List<AxisOffset> offsets) {
        return offsets.stream()
                .map(offset -> larger(offset).abs())
                .max(Comparator.naturalOrder())
                .orElse(Angle.ZERO);
    }

    private static Angle larger(AxisOffset offset) {
        return offset.east().abs().compareTo(offset.up().abs()) > 0 ? offset.east() : offset.up();
    }

    static String eastOrWest(AxisOffset offset) {
        return offset.east().radians() >= 0 ? " east" : " west";
    }

    static String highOrLow(AxisOffset offset) {
        return offset.up().radians() >= 0 ? " high" : " low";
    }

    static String pole(Site site) {
        return site.isNorthern() ? "north celestial pole" : "south celestial pole";
    }

    /**
     * Whether other sightings constrain the same direction; if not, the outlier only contradicts the usual setting of a
     * mount.
     */
    private static boolean hasOthers(Agreement agreement, Fix fix) {
        return fix.agreements().stream()
                .anyMatch(other -> other.seq() != agreement.seq() && other.isComparableWith(agreement));
    }

    private static String contradiction(Agreement agreement, boolean hasOthers) {
        String sigmas = String.format(Locale.ROOT, "%.0f", Math.sqrt(agreement.squaredInnovation()));
        return "CONTRADICTS #" + agreement.seq() + " (" + EventWords.kind(agreement.kind()) + "): a " + sigmas
                + (hasOthers
                        ? "-sigma outlier; "
                                + (agreement.accused()
                                        ? "not used."
                                        : "not used for now. Either it or another entry is wrong.")
                        : " sigma from anywhere near the pole; not used until another sighting agrees with it.")
                + agreement
                        .likelyCause()
                        .map(cause -> " It would fit if " + cause + ".")
                        .orElse(toCheck(agreement.kind()));
    }

    private static String toCheck(String kind) {
        return switch (kind) {
            case TurnedFrames.KIND ->
                " Check the clock, and that nothing but right ascension was turned between the frames; take them again.";
            case "compass", "level and scale" -> " Read it again.";
            default -> " Check the star, the time and the view, then take it again.";
        };
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
                    "Learned: a turn of the %s screw goes %.0f %% as far as the rig file says (±%.0f %%).",
                    screw,
                    100 * factor,
                    100 * sigma));
        }
    }

    /** {@code In azimuth and altitude: 3.8° right, 1.6° low.} */
    private static String azimuthAndAltitude(Angle azimuthError, Angle altitudeError) {
        Angle larger =
                Math.abs(azimuthError.radians()) > Math.abs(altitudeError.radians()) ? azimuthError : altitudeError;
        return "In azimuth and altitude: " + AngleWords.sizeLike(larger, azimuthError)
                + (azimuthError.radians() >= 0 ? " right" : " left") + ", "
                + AngleWords.sizeLike(larger, altitudeError) + (altitudeError.radians() >= 0 ? " high." : " low.");
    }

    private static String capitalised(String sentence) {
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }
}
