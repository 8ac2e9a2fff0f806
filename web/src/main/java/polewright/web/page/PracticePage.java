package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import polewright.drawing.chart.RockedFieldDrawing;
import polewright.operations.practice.PracticeNight;
import polewright.report.text.PracticeWords;
import polewright.simulation.practice.CompletedAction;
import polewright.simulation.practice.ObservedReadings;
import polewright.simulation.practice.PracticeState;
import polewright.web.form.CommandForm;
import polewright.web.form.PracticeForms;
import polewright.web.session.FrameAddress;
import polewright.web.session.PracticeAddress;
import polewright.web.view.Section;

/**
 * The wedge of the practice: screws to turn, instruments to read, and the last view. Sightings are logged on the
 * ordinary pages.
 */
final class PracticePage implements Page {
    private static final List<String> TURNS = List.of("1/8", "1/4", "1/2", "1", "4");
    private static final List<Integer> FRAMES_DEG = List.of(-30, 0, 30);

    @Override
    public String path() {
        return PracticeAddress.GAME;
    }

    @Override
    public String name() {
        return "Practice";
    }

    @Override
    public String address(PageRequest request) {
        return path();
    }

    @Override
    public List<Section> sections(PageRequest request) {
        List<Section> sections = new ArrayList<>();
        PracticeNight.current(request.session().workbench())
                .ifPresent(practice -> sections.addAll(of(request, practice.state())));
        sections.add(new Section.Entry(Forms.fresh(request, PracticeForms.BEGIN, Map.of())));
        return sections;
    }

    private static List<Section> of(PageRequest request, PracticeState state) {
        List<Section> sections = new ArrayList<>();
        sections.add(new Section.Words("", List.of(PracticeWords.standing(state))));
        if (!state.done().isEmpty()) {
            sections.add(lastView(request, state.done().get(state.done().size() - 1)));
        }
        sections.add(new Section.Ways(
                "", List.of(new Section.Way(PracticeAddress.NIGHT + "/", "What to do now, and how to log it", true))));
        sections.add(new Section.Presses(
                "Look",
                List.of(
                        press(request, PracticeForms.COMPASS, "Compass", Map.of()),
                        press(request, PracticeForms.SCALE, "Level and scale", Map.of()),
                        press(request, PracticeForms.ROCKING, "Swing and look", Map.of()))));
        sections.add(screw(request, "azimuth", "Azimuth screw"));
        sections.add(screw(request, "altitude", "Altitude screw"));
        sections.add(new Section.Presses(
                "Clamps, time",
                List.of(
                        state.clamped()
                                ? press(request, PracticeForms.UNCLAMP, "Loosen the clamps", Map.of())
                                : press(request, PracticeForms.CLAMP, "Tighten the clamps", Map.of()),
                        press(request, PracticeForms.WAIT, "Wait 10 min", Map.of("minutes", "10")))));
        if (state.scenario().hasCamera()) {
            sections.add(new Section.Presses(
                    "Take a frame, right ascension turned by",
                    FRAMES_DEG.stream()
                            .map(deg ->
                                    press(request, PracticeForms.FRAME, deg + "°", Map.of("turned", deg.toString())))
                            .toList()));
            sections.add(new Section.Ways(
                    "",
                    List.of(new Section.Way(
                            PracticeAddress.NIGHT + FrameAddress.PAGE,
                            "What the frames show, and what remains",
                            false))));
        }
        sections.add(new Section.Entry(Forms.fresh(request, PracticeForms.SCREW, Map.of())));
        sections.add(new Section.Entry(Forms.fresh(request, PracticeForms.DRIFT, Map.of())));
        sections.add(new Section.Entry(Forms.fresh(request, PracticeForms.MOVE, Map.of())));
        sections.add(new Section.Ways(
                "",
                List.of(new Section.Way(
                        PracticeAddress.DEBRIEF, "Debrief: where does the axis really point?", false))));
        return sections;
    }

    private static Section lastView(PageRequest request, CompletedAction last) {
        if (last.seen() instanceof ObservedReadings.WhileRocking rocking) {
            return new Section.Drawing(
                    "What you see; everything turns around the centre of rotation",
                    RockedFieldDrawing.svg(rocking.field(), rocking.optic().name(), request.palette()));
        }
        return new Section.Words("Result", List.of(PracticeWords.done(last).get(0)));
    }

    private static Section screw(PageRequest request, String screw, String heading) {
        List<Section.Press> presses = new ArrayList<>();
        for (String turns : TURNS) {
            presses.add(press(
                    request,
                    PracticeForms.SCREW,
                    turns + " counter-clockwise",
                    Map.of("screw", screw, "turns", turns + " ccw")));
            presses.add(
                    press(request, PracticeForms.SCREW, turns + " clockwise", Map.of("screw", screw, "turns", turns)));
        }
        return new Section.Presses(heading, presses, true);
    }

    private static Section.Press press(
            PageRequest request, CommandForm form, String label, Map<String, String> values) {
        return new Section.Press(label, Forms.fresh(request, form, values));
    }
}
