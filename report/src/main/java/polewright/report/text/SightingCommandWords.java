package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import polewright.alignment.advice.Advice;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.session.NightState;

/** What to type once the advised sighting has been taken, with the optics of the rig. */
final class SightingCommandWords {
    private SightingCommandWords() {}

    static List<Line> of(Advice.TakeSighting take, NightState night) {
        Rig rig = night.situation().rig();
        Optional<Optic> optic = take.kind().optic(rig);
        return switch (take.kind()) {
            case SHADOW ->
                List.of(
                        Tag.CARE.line(
                                "Work with the shadow only. Never look at the Sun or point tube or finder toward it."),
                        then("polewright sight shadow ANGLE", " (clockwise from the shadow to the axis)"));
            case COMPASS -> List.of(then("polewright sight compass BEARING", ""));
            case LEVEL_AND_SCALE -> List.of(then("polewright sight scale ALTITUDE", ""));
            case FRAMES ->
                List.of(then("polewright sight frames FIRST SECOND", " (the files of the frames, in any order)"));
            case STILL_POINT ->
                command(
                        "log it; FIELDS in field widths, CLOCK such as 4.5:",
                        "polewright sight still "
                                + star(take)
                                + " --distance FIELDS --toward CLOCK"
                                + optic.map(SightingCommandWords::with).orElse(" --field DEG --view VIEW"));
            case DRIFT_ON_MERIDIAN, DRIFT_EAST_OR_WEST ->
                command(
                        "log it; N in " + unit(optic)
                                + ", WAY is north or south (nudge the tube toward the pole: stars move "
                                + (night.begun().site().isNorthern() ? "south" : "north") + " in the view):",
                        "polewright sight drift "
                                + star(take) + " --minutes "
                                + take.watch().toMinutes() + " --moved N --toward WAY"
                                + optic.map(SightingCommandWords::withUnit).orElse(""));
        };
    }

    /**
     * The meaning of the words in capitals, then the command on a line of its own: it would not fit next to the tag.
     */
    private static List<Line> command(String explained, String typed) {
        List<Line> lines = new ArrayList<>(List.of(Tag.THEN.line(explained)));
        lines.addAll(Tag.TYPED.lines(Wrapping.command(typed)));
        return lines;
    }

    private static Line then(String typed, String explained) {
        return Tag.THEN.line(Wrapping.unbroken(typed) + explained);
    }

    private static String unit(Optional<Optic> optic) {
        return optic.map(o -> o.division().isPresent() ? "divisions" : "fractions of the way to the edge")
                .orElse("arcseconds");
    }

    private static String withUnit(Optic optic) {
        return optic.division().isPresent() ? with(optic) : " --unit radii" + with(optic);
    }

    private static String with(Optic optic) {
        return " --with " + quoted(optic.name());
    }

    private static String star(Advice.TakeSighting take) {
        return take.star().map(star -> quoted(star.name())).orElse("STAR");
    }

    private static String quoted(String name) {
        String typed = name.toLowerCase(Locale.ROOT);
        return typed.contains(" ") ? '"' + typed + '"' : typed;
    }
}
