package polewright.operations.sighting;

import static polewright.operations.sighting.SightingActions.STAR;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.Sighting;
import polewright.drawing.sighting.SightingSketch;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;

final class BearingEntry implements SightingEntry {
    private static final Argument<Double> ANGLE = Argument.positional(
                    "angle",
                    "Angle from the star to the axis",
                    "Clockwise, seen from above.",
                    Figure.signed(Unit.DEGREES))
            .required();

    private final Action action = SightingActions.of(
            "bearing",
            "Measure from a star's bearing",
            "The horizontal angle from the direction of a star to the axis.",
            BearingEntry::sighting,
            STAR,
            ANGLE,
            SightingActions.usually(BodyBearing.USUAL_SIGMA));

    @Override
    public Action action() {
        return action;
    }

    private static Sighting sighting(Entries entries, ActionContext context) {
        return new BodyBearing(
                Replacement.time(entries, context),
                entries.of(STAR),
                BodyBearing.Line.TOWARD_BODY,
                Angle.ofDegrees(entries.of(ANGLE)),
                SightingActions.sigma(entries, BodyBearing.USUAL_SIGMA));
    }

    @Override
    public Optional<Map<String, String>> typed(Sighting logged) {
        return logged instanceof BodyBearing bearing && bearing.line() == BodyBearing.Line.TOWARD_BODY
                ? Optional.of(TypedText.withSigma(
                        Map.of(
                                STAR.name(), TypedText.body(bearing.body()),
                                ANGLE.name(), TypedText.degrees(bearing.clockwise())),
                        bearing.sigma(),
                        BodyBearing.USUAL_SIGMA))
                : Optional.empty();
    }

    @Override
    public SightingSketch sketch(Entries entries, NightEvent.Begun begun, Instant now) {
        return new SightingSketch.FromLine(
                BodyBearing.Line.TOWARD_BODY,
                SightingActions.label(entries),
                Angle.ofDegrees(entries.given(ANGLE).orElse(-40.0)));
    }
}
