package polewright.operations.sighting;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.Sighting;
import polewright.drawing.sighting.SightingSketch;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Tick;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

final class ScaleEntry implements SightingEntry {
    // Farther from the latitude than any careless reading, while its complement is near: the wrong end of the scale.
    private static final double SURELY_OFF_DEG = 10;
    private static final double CLOSE_DEG = 5;

    private static final Argument<Double> ALTITUDE = Argument.positional(
                    "altitude",
                    "Altitude on the scale",
                    "As the scale reads.",
                    Figure.of(Unit.DEGREES).between(-90, 90, "read the scale again"))
            .required();
    private static final Argument<Boolean> FROM_ZENITH =
            Argument.option("from-zenith", "The scale counts down from the zenith", "", new Tick());
    private static final Argument<Boolean> FROM_HORIZON = Argument.option(
                    "from-horizon",
                    "The scale counts from the horizon",
                    "Only if the reading looks unlikely but is right.",
                    new Tick())
            .seldom();

    private final Action action = SightingActions.of(
            "scale",
            "Read level and scale",
            "Level the base first. Then read the wedge's altitude scale.",
            ScaleEntry::sighting,
            ALTITUDE,
            FROM_ZENITH,
            FROM_HORIZON,
            SightingActions.usually(LevelledScale.USUAL_SIGMA));

    @Override
    public Action action() {
        return action;
    }

    @Override
    public List<SightingKind> answers() {
        return List.of(SightingKind.LEVEL_AND_SCALE);
    }

    private static Sighting sighting(Entries entries, ActionContext context) {
        double readDeg = entries.of(ALTITUDE);
        boolean fromZenith = entries.isTicked(FROM_ZENITH);
        boolean fromHorizon = entries.isTicked(FROM_HORIZON);
        if (fromZenith && fromHorizon) {
            throw new InputRefused(
                    "a scale counts from the zenith or from the horizon",
                    "give only one of {from-zenith} and" + " {from-horizon}");
        }
        double latitudeDeg = context.begun().site().poleAltitude().degrees();
        boolean looksTurned =
                Math.abs(readDeg - latitudeDeg) > SURELY_OFF_DEG && Math.abs(90 - readDeg - latitudeDeg) < CLOSE_DEG;
        if (looksTurned && !fromZenith && !fromHorizon && !context.isConfirmed()) {
            throw new InputRefused(
                    PlainNumber.asTyped(readDeg) + " degrees is far from your latitude (" + PlainNumber.of(latitudeDeg)
                            + "), but 90 - " + PlainNumber.asTyped(readDeg) + " = " + PlainNumber.of(90 - readDeg),
                    "if the scale counts from the zenith, give {from-zenith}; otherwise give {from-horizon}");
        }
        return new LevelledScale(
                Replacement.time(entries, context),
                Angle.ofDegrees(fromZenith ? 90 - readDeg : readDeg),
                SightingActions.sigma(entries, LevelledScale.USUAL_SIGMA));
    }

    @Override
    public Optional<Map<String, String>> typed(Sighting logged) {
        return logged instanceof LevelledScale scale
                ? Optional.of(TypedText.withSigma(
                        Map.of(ALTITUDE.name(), TypedText.degrees(scale.altitude())),
                        scale.sigma(),
                        LevelledScale.USUAL_SIGMA))
                : Optional.empty();
    }

    @Override
    public SightingSketch sketch(Entries entries, NightEvent.Begun begun, Instant now) {
        boolean isFromZenith = entries.isTicked(FROM_ZENITH);
        double latitudeDeg = begun.site().poleAltitude().degrees();
        double readingDeg = entries.given(ALTITUDE).orElse(isFromZenith ? 90 - latitudeDeg : latitudeDeg);
        if (readingDeg < 0) {
            throw new InputRefused("a wedge's scale begins at 0", "read the scale again");
        }
        return new SightingSketch.Scale(
                Angle.ofDegrees(readingDeg), isFromZenith, begun.site().isNorthern());
    }
}
