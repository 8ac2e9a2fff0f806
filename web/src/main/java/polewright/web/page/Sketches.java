package polewright.web.page;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import polewright.drawing.HorizonStripDrawing;
import polewright.operations.input.SkylineInput;
import polewright.report.scene.SightingScene;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.Horizon;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;
import polewright.web.form.CommandForm;
import polewright.web.form.NightForms;
import polewright.web.form.SightingForms;
import polewright.web.session.NightSession.Tonight;
import polewright.web.view.FormView;

/** The pictures in forms: what to look for and what to measure, or what is being set. */
public final class Sketches {
    private static final Set<CommandForm> DRAWN = Set.of(
            SightingForms.COMPASS,
            SightingForms.SCALE,
            SightingForms.SHADOW,
            SightingForms.BEARING,
            SightingForms.ALTITUDE,
            SightingForms.STILL,
            SightingForms.DRIFT,
            SightingForms.CENTRE,
            NightForms.HORIZON);
    private static final String CORNERS = "corners";

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
    public static Optional<String> svg(PageRequest asked, CommandForm form, Map<String, String> values) {
        return asked.desk().tonight().flatMap(tonight -> {
            Instant now = asked.desk().workbench().now();
            return form.equals(NightForms.HORIZON)
                    ? skyline(asked, tonight, now, values.getOrDefault(CORNERS, ""))
                    : new SightingScene(values, tonight.state().begun(), now)
                            .sketch(form.id())
                            .map(sketch -> sketch.svg(asked.palette()));
        });
    }

    private static Optional<String> skyline(PageRequest asked, Tonight tonight, Instant now, String typed) {
        Site site = tonight.state().begun().site();
        try {
            List<Horizon.Point> corners = new ArrayList<>();
            for (String corner : typed.strip().split("\\s+", -1)) {
                if (!corner.isEmpty()) {
                    corners.add(SkylineInput.corner(corner));
                }
            }
            ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(now), Weather.standardAt(site.heightMetres()));
            Angle sun = moment.hourAngle(Ephemeris.apparent(SolarSystemBody.SUN, moment))
                    .declination();
            return Optional.of(HorizonStripDrawing.svg(new Horizon(corners), site, sun, asked.palette()));
        } catch (InputRefused e) {
            return Optional.empty();
        }
    }

    /** A skyline as it is typed: to a hundredth of a degree. */
    static String typed(Horizon horizon) {
        return horizon.points().stream()
                .map(corner -> hundredths(corner.azimuth()) + "," + hundredths(corner.altitude()))
                .collect(Collectors.joining(" "))
                .toLowerCase(Locale.ROOT);
    }

    private static String hundredths(Angle angle) {
        return PlainNumber.of(Math.rint(angle.degrees() * 100) / 100);
    }

    /** What is filled in may be wrong, so that it cannot be drawn: then the example is. */
    static Optional<FormView.Sketch> of(PageRequest asked, CommandForm form, Map<String, String> values) {
        if (!DRAWN.contains(form)) {
            return Optional.empty();
        }
        return svg(asked, form, values)
                .or(() -> svg(asked, form, Map.of()))
                .map(svg -> new FormView.Sketch(asked.to(path(form)), svg, caption(form)));
    }

    private static String caption(CommandForm form) {
        return form.equals(NightForms.HORIZON)
                ? "The skyline all round, the pole in the middle. Faint: star tracks, and today's Sun."
                : "An example until you fill in the form, then your figures.";
    }
}
