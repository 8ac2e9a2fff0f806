package polewright.web.page;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import polewright.drawing.sighting.SightingSketch;
import polewright.drawing.strip.HorizonDrawing;
import polewright.operations.action.ArgumentRefused;
import polewright.operations.action.Entries;
import polewright.operations.input.SkylineInput;
import polewright.operations.sighting.Centring;
import polewright.operations.sighting.SightingEntries;
import polewright.session.event.NightEvent;
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
import polewright.web.form.SetupForms;
import polewright.web.form.SightingForms;
import polewright.web.session.NightSession.Tonight;
import polewright.web.view.FormView;

/** The pictures in forms: what to look for and what to measure, or what is being set. */
public final class Sketches {
    private static final Set<CommandForm> DRAWN = Stream.concat(
                    SightingForms.typed().stream(), Stream.of(SightingForms.CENTRE, SetupForms.HORIZON))
            .collect(Collectors.toUnmodifiableSet());
    private static final String CORNERS = "corners";

    private Sketches() {}

    /** The forms that have a picture. */
    public static Set<CommandForm> drawn() {
        return DRAWN;
    }

    /** Its address within a session. */
    public static String path(CommandForm form) {
        return "/sketch/" + form.id();
    }

    /** The picture for the current entries; empty if they cannot be drawn, or no night has begun. */
    public static Optional<String> svg(PageRequest request, CommandForm form, Map<String, String> values) {
        return request.session().tonight().flatMap(tonight -> {
            Instant now = request.session().workbench().now();
            return form.equals(SetupForms.HORIZON)
                    ? skyline(request, tonight, now, values.getOrDefault(CORNERS, ""))
                    : sketch(form, values, tonight.state().begun(), now).map(sketch -> sketch.svg(request.palette()));
        });
    }

    private static Optional<SightingSketch> sketch(
            CommandForm form, Map<String, String> values, NightEvent.Begun begun, Instant now) {
        try {
            Entries entries = form.unfinished(values);
            return form.equals(SightingForms.CENTRE)
                    ? Optional.of(Centring.sketch(entries))
                    : SightingEntries.of(form.action()).map(entry -> entry.sketch(entries, begun, now));
        } catch (InputRefused | ArgumentRefused notYet) {
            return Optional.empty();
        }
    }

    private static Optional<String> skyline(PageRequest request, Tonight tonight, Instant now, String typed) {
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
            return Optional.of(HorizonDrawing.toEdit(new Horizon(corners), site, sun, request.palette()));
        } catch (InputRefused e) {
            return Optional.empty();
        }
    }

    /** A horizon as it is typed: to a hundredth of a degree. */
    static String typed(Horizon horizon) {
        return horizon.points().stream()
                .map(corner -> hundredths(corner.azimuth()) + "," + hundredths(corner.altitude()))
                .collect(Collectors.joining(" "))
                .toLowerCase(Locale.ROOT);
    }

    private static String hundredths(Angle angle) {
        return PlainNumber.of(Math.rint(angle.degrees() * 100) / 100);
    }

    /** If the entries cannot be drawn, the example is. */
    static Optional<FormView.Sketch> of(PageRequest request, CommandForm form, Map<String, String> values) {
        if (!DRAWN.contains(form)) {
            return Optional.empty();
        }
        return svg(request, form, values)
                .or(() -> svg(request, form, Map.of()))
                .map(svg -> new FormView.Sketch(request.to(path(form)), svg, caption(form)));
    }

    private static String caption(CommandForm form) {
        return form.equals(SetupForms.HORIZON)
                ? "The skyline all round, the pole in the middle. Faint: star tracks, and today's Sun."
                : "An example until you fill in the form, then your figures.";
    }
}
