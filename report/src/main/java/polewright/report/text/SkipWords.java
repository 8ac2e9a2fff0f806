package polewright.report.text;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.AdvisedStar;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.session.NightState;
import polewright.session.event.Skip;

/** Why an advised sighting cannot be taken, in words, and the choices offered. */
public final class SkipWords {
    private SkipWords() {}

    /** The reasons that make sense for this sighting, the likeliest first. */
    public static List<Skip.Reason> offered(Advice.TakeSighting take, Rig rig) {
        Skip.Sighting sighting = Skip.Sighting.of(take.kind());
        return Arrays.stream(Skip.Reason.values())
                .filter(reason -> reason.isOf(sighting))
                .filter(reason -> isSensible(reason, take, rig))
                .toList();
    }

    private static boolean isSensible(Skip.Reason reason, Advice.TakeSighting take, Rig rig) {
        boolean needsStar = Skip.Sighting.of(take.kind()).isOfStar() && reason != Skip.Reason.NO_OPTIC;
        if (needsStar && take.star().isEmpty()) {
            return false;
        }
        return switch (reason) {
            // If the pole star is bright, "not in view" covers this, and leads to instructions for finding it.
            case NOT_FOUND ->
                !Skip.Reason.NOT_IN_VIEW.isOf(Skip.Sighting.of(take.kind()))
                        || !take.star().filter(AdvisedStar::isBright).isPresent();
            case NO_OPTIC -> take.kind().optic(rig).isPresent();
            case NOT_IN_VIEW, HIDDEN, CLOUD, NO_INSTRUMENT -> true;
        };
    }

    /** The choice to press: {@code I cannot find Capella}. */
    public static String label(Skip.Reason reason, Advice.TakeSighting take, Rig rig) {
        String star = take.star().map(AdvisedStar::name).orElse("it");
        return switch (reason) {
            case NOT_FOUND -> "I cannot find " + star;
            case NOT_IN_VIEW -> star + " is not in view";
            case HIDDEN -> "Something blocks " + star;
            case CLOUD -> take.star().isPresent() ? "Cloud over it" : "Cloud";
            case NO_OPTIC -> "No " + take.kind().optic(rig).map(Optic::name).orElse("optic") + " here";
            case NO_INSTRUMENT -> "No " + instrument(Skip.Sighting.of(take.kind())) + " here";
        };
    }

    /** What to type instead of the sighting, in one line; none if no sighting is advised. */
    public static List<Line> hint(NightState night) {
        if (!(night.advice() instanceof Advice.TakeSighting take)) {
            return List.of();
        }
        List<String> words = offered(take, night.situation().rig()).stream()
                .map(SkipWords::typed)
                .toList();
        return words.isEmpty()
                ? List.of()
                : List.of(Tag.ELSE.line(Wrapping.unbroken("polewright skip " + words.get(0))
                        + (words.size() == 1
                                ? ""
                                : " (or " + String.join(", ", words.subList(1, words.size())) + ")")));
    }

    /** As it is typed: {@code not-found}. */
    public static String typed(Enum<?> word) {
        return word.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** {@code skipped a drift on Capella: cloud}. */
    static String of(Skip skip) {
        return "skipped " + skip.sighting().words()
                + skip.star().map(star -> " on " + star.label()).orElse("") + ": " + why(skip);
    }

    private static String why(Skip skip) {
        return switch (skip.because()) {
            case NOT_FOUND -> "not found";
            case NOT_IN_VIEW -> "not in view";
            case HIDDEN -> "hidden";
            case CLOUD -> "cloud";
            case NO_OPTIC -> "no " + skip.optic().orElse("optic");
            case NO_INSTRUMENT -> "no " + instrument(skip.sighting());
        };
    }

    /** The consequence, in a sentence. */
    public static String consequence(Skip skip) {
        String star = skip.star().map(body -> body.label()).orElse("It");
        return switch (skip.because()) {
            case NOT_FOUND -> star + " will not be suggested again tonight.";
            case NOT_IN_VIEW ->
                "The centre of rotation will be suggested again once a screw is turned or the mount is moved.";
            case HIDDEN -> "No more sightings tonight within 10° left and right of " + star + ", up to 5° above it.";
            case CLOUD ->
                skip.star().isPresent()
                        ? "No sightings within 30° of " + star + " for an hour."
                        : sighting(skip) + " not suggested for an hour.";
            case NO_OPTIC ->
                "Tonight's advice will do without the " + skip.optic().orElse("optic") + ".";
            case NO_INSTRUMENT -> sighting(skip) + " not suggested again tonight.";
        };
    }

    private static String sighting(Skip skip) {
        return switch (skip.sighting()) {
            case COMPASS -> "A compass bearing is";
            case SCALE -> "The wedge's scale is";
            case SHADOW -> "A shadow is";
            case FRAMES -> "Camera frames are";
            case STILL_POINT, DRIFT -> throw new IllegalStateException("no sighting of a star is skipped as a whole");
        };
    }

    private static String instrument(Skip.Sighting sighting) {
        return switch (sighting) {
            case COMPASS -> "compass";
            case SCALE -> "scale";
            case SHADOW -> "plumb line";
            case FRAMES -> "camera";
            case STILL_POINT, DRIFT -> throw new IllegalStateException("no one instrument for " + sighting);
        };
    }

    /** What can be done while there is nothing to sight. */
    static List<Line> waiting(Advice.WaitForSky wait) {
        List<Line> lines = new ArrayList<>();
        lines.add(Tag.WAIT.line("No sighting is left: everything that could come next has been skipped."));
        lines.add(Optional.of(wait)
                .flatMap(Advice.WaitForSky::lookAgain)
                .map(at ->
                        Tag.NEXT.line("Look again at " + AdviceWords.clock(at) + ", when the cloud may have passed."))
                .orElse(Tag.NEXT.line("Undo a skip as soon as that sighting is possible.")));
        lines.add(Tag.THEN.line(Wrapping.unbroken("polewright undo NUMBER") + " brings one back; "
                + Wrapping.unbroken("polewright log") + " lists them."));
        return lines;
    }
}
