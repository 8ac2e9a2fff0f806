package polewright.operations.sighting;

import static polewright.operations.sighting.SightingActions.STAR;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import polewright.alignment.sighting.BodyAltitude;
import polewright.alignment.sighting.Sighting;
import polewright.drawing.sighting.SightingSketch;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

final class AltitudeEntry implements SightingEntry {
    private static final Argument<Double> DIFFERENCE = Argument.positional(
                    "difference",
                    "Altitude of the axis minus that of the star",
                    "Both with the same inclinometer.",
                    Figure.signed(Unit.DEGREES))
            .required();

    private final Action action = SightingActions.of(
            "altitude",
            "Measure from a star's altitude",
            "Lay one inclinometer along the axis, then along the tube with the star centred.",
            AltitudeEntry::sighting,
            STAR,
            DIFFERENCE,
            SightingActions.usually(BodyAltitude.USUAL_SIGMA));

    @Override
    public Action action() {
        return action;
    }

    private static Sighting sighting(Entries entries, ActionContext context) {
        return new BodyAltitude(
                Replacement.time(entries, context),
                entries.of(STAR),
                Angle.ofDegrees(entries.of(DIFFERENCE)),
                SightingActions.sigma(entries, BodyAltitude.USUAL_SIGMA));
    }

    @Override
    public Optional<Map<String, String>> typed(Sighting logged) {
        return logged instanceof BodyAltitude altitude
                ? Optional.of(TypedText.withSigma(
                        Map.of(
                                STAR.name(), TypedText.body(altitude.body()),
                                DIFFERENCE.name(), TypedText.degrees(altitude.axisAboveBody())),
                        altitude.sigma(),
                        BodyAltitude.USUAL_SIGMA))
                : Optional.empty();
    }

    @Override
    public SightingSketch sketch(Entries entries, NightEvent.Begun begun, Instant now) {
        double axisDeg = begun.site().poleAltitude().degrees();
        double differenceDeg = entries.given(DIFFERENCE).orElse(Math.min(12, axisDeg - 5));
        if (axisDeg - differenceDeg < -5 || axisDeg - differenceDeg > 95) {
            throw new InputRefused("that star is below the horizon", "check the sign of the difference");
        }
        return new SightingSketch.Difference(
                SightingActions.label(entries), Angle.ofDegrees(axisDeg), Angle.ofDegrees(differenceDeg));
    }
}
