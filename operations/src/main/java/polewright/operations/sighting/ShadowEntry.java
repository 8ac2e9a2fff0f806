package polewright.operations.sighting;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.Sighting;
import polewright.drawing.sighting.SightingSketch;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Choice;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Option;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.operations.input.BodyFinder;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;

final class ShadowEntry implements SightingEntry {
    private static final String MOON = "moon";

    private static final Argument<Double> ANGLE = Argument.positional(
                    "angle",
                    "Angle from the shadow to the axis",
                    "Clockwise, seen from above.",
                    Figure.signed(Unit.DEGREES))
            .required();
    private static final Argument<SkyBody> BODY = Argument.option(
            "body",
            "What casts the shadow",
            "",
            new Choice<>("BODY", "the Sun", List.of(new Option(MOON, "the Moon")), BodyFinder::named));

    private final Action action = SightingActions.of(
            "shadow",
            "Measure from a shadow",
            "Never look at the Sun or point tube or finder toward it: keep them capped. Work with the shadow of a plumb"
                    + " line on the ground.",
            ShadowEntry::sighting,
            ANGLE,
            BODY,
            SightingActions.usually(BodyBearing.USUAL_SIGMA));

    @Override
    public Action action() {
        return action;
    }

    @Override
    public List<SightingKind> answers() {
        return List.of(SightingKind.SHADOW);
    }

    private static Sighting sighting(Entries entries, ActionContext context) {
        return new BodyBearing(
                Replacement.time(entries, context),
                entries.given(BODY).orElse(SolarSystemBody.SUN),
                BodyBearing.Line.SHADOW,
                Angle.ofDegrees(entries.of(ANGLE)),
                SightingActions.sigma(entries, BodyBearing.USUAL_SIGMA));
    }

    @Override
    public Optional<Map<String, String>> typed(Sighting logged) {
        if (!(logged instanceof BodyBearing bearing) || bearing.line() != BodyBearing.Line.SHADOW) {
            return Optional.empty();
        }
        Map<String, String> values = TypedText.withSigma(
                Map.of(ANGLE.name(), TypedText.degrees(bearing.clockwise())), bearing.sigma(), BodyBearing.USUAL_SIGMA);
        if (bearing.body() == SolarSystemBody.MOON) {
            values.put(BODY.name(), MOON);
        }
        return Optional.of(values);
    }

    @Override
    public SightingSketch sketch(Entries entries, NightEvent.Begun begun, Instant now) {
        boolean isMoon =
                entries.given(BODY).filter(body -> body == SolarSystemBody.MOON).isPresent();
        return new SightingSketch.FromLine(
                BodyBearing.Line.SHADOW,
                isMoon ? "the Moon" : "the Sun",
                Angle.ofDegrees(entries.given(ANGLE).orElse(25.0)));
    }
}
