package polewright.app.web.room;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import polewright.app.scene.SightingScene;
import polewright.app.web.form.CommandForm;
import polewright.app.web.form.CommandForms;
import polewright.app.web.view.FormView;
import polewright.axis.drawing.SightingSketch;

/** The pictures in forms: what to look for, and what to measure. */
public final class Sketches {
    private static final Set<CommandForm> DRAWN = Set.of(
            CommandForms.COMPASS,
            CommandForms.SCALE,
            CommandForms.SHADOW,
            CommandForms.BEARING,
            CommandForms.ALTITUDE,
            CommandForms.STILL,
            CommandForms.DRIFT,
            CommandForms.CENTRE);

    private Sketches() {}

    /** The forms that have one. */
    public static Set<CommandForm> drawn() {
        return DRAWN;
    }

    /** Its address within a desk. */
    public static String path(CommandForm form) {
        return "/sketch/" + form.id();
    }

    /** The picture for what is filled in; empty when that cannot be drawn, or no night has begun. */
    public static Optional<String> svg(Asked asked, CommandForm form, Map<String, String> values) {
        return asked.desk()
                .tonight()
                .flatMap(tonight -> new SightingScene(
                                values,
                                tonight.state().begun(),
                                asked.desk().workbench().now())
                        .sketch(form.id()))
                .map((SightingSketch sketch) -> sketch.svg(asked.palette()));
    }

    /** What is filled in may be wrong, so that it cannot be drawn: then the example is. */
    static Optional<FormView.Sketch> of(Asked asked, CommandForm form, Map<String, String> values) {
        if (!DRAWN.contains(form)) {
            return Optional.empty();
        }
        return svg(asked, form, values)
                .or(() -> svg(asked, form, Map.of()))
                .map(svg -> new FormView.Sketch(asked.to(path(form)), svg));
    }
}
