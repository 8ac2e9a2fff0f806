package polewright.operations.sighting;

import static polewright.operations.sighting.SightingActions.STAR;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarTrail;
import polewright.drawing.sighting.SightingSketch;
import polewright.drawing.sighting.TrailSketch;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Choice;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Option;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

final class TrailEntry implements SightingEntry {
    private static final Argument<Double> OFF = Argument.option(
                    "off",
                    "Off the line at the western edge",
                    "A fraction of the way from the centre to the edge: 0.1 is a tenth, 0 means on the line.",
                    Figure.of(Unit.NONE)
                            .between(0, 0.85, "give 0.1 for a tenth of the way from the centre to the edge"))
            .required();
    private static final Argument<Boolean> TOWARD = Argument.option(
                    "toward",
                    "Toward",
                    "Nudge the tube toward the celestial pole to see which side is which: stars move away from it.",
                    new Choice<>(
                            "SIDE",
                            "",
                            List.of(new Option("north", "north"), new Option("south", "south")),
                            TrailEntry::isNorth))
            .required();
    private static final Argument<Double> SIGMA = Argument.option(
                    "sigma", "Uncertainty", "1 sigma, as a fraction of the radius.", Figure.of(Unit.NONE))
            .otherwise(TypedText.figure(StarTrail.USUAL_SIGMA_OF_RADIUS))
            .seldom();

    private final Action action = SightingActions.of(
                    "trail",
                    "Compare a star's trail with the mount",
                    "With the drive off, turn the eyepiece until a star runs along a line of the crosshair. Start the"
                            + " drive, centre the star, and swing the tube in right ascension until the star reaches the"
                            + " western edge, where stars leave with the drive off. How far off the line is it there?",
                    TrailEntry::sighting,
                    STAR,
                    OFF,
                    TOWARD,
                    SIGMA)
            .forExample(
                    "at the edge, Kochab is a fifth of the radius north of the line",
                    "kochab --off 0.2 --toward north");

    @Override
    public Action action() {
        return action;
    }

    private static Sighting sighting(Entries entries, ActionContext context) {
        return new StarTrail(
                Replacement.time(entries, context),
                entries.of(STAR),
                towardNorth(entries.of(OFF), entries.of(TOWARD)),
                entries.given(SIGMA).map(TrailEntry::angle).orElse(StarTrail.USUAL_SIGMA));
    }

    /** A star at the edge that is this fraction of the radius off a line through the centre. */
    private static Angle angle(double fraction) {
        return new Angle(Math.asin(Math.max(-1, Math.min(1, fraction))));
    }

    private static Angle towardNorth(double fraction, boolean isNorth) {
        return isNorth ? angle(fraction) : angle(fraction).negated();
    }

    private static boolean isNorth(String typed) {
        return DriftArguments.isNorth(typed.toLowerCase(Locale.ROOT))
                .orElseThrow(
                        () -> new InputRefused("'" + typed + "' is not a side of the line", "give north or south"));
    }

    @Override
    public Optional<Map<String, String>> typed(Sighting logged) {
        if (!(logged instanceof StarTrail trail)) {
            return Optional.empty();
        }
        Map<String, String> values = new LinkedHashMap<>(Map.of(
                STAR.name(), TypedText.body(trail.star()),
                OFF.name(), TypedText.figure(Math.abs(trail.towardNorth().sin())),
                TOWARD.name(), trail.towardNorth().radians() < 0 ? "south" : "north"));
        return Optional.of(TypedText.withSigma(values, trail.sigma().sin(), StarTrail.USUAL_SIGMA_OF_RADIUS));
    }

    @Override
    public SightingSketch sketch(Entries entries, NightEvent.Begun begun, Instant now) {
        return new TrailSketch(
                SightingActions.label(entries),
                entries.given(OFF).orElse(0.2),
                entries.given(TOWARD).orElse(true));
    }
}
