package polewright.operations.sighting;

import static polewright.operations.sighting.SightingActions.STAR;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StillPoint;
import polewright.drawing.sighting.SightingSketch;
import polewright.mount.rig.ClockDirection;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

final class CentreOfRotationEntry implements SightingEntry {
    private static final Argument<Double> DISTANCE = Argument.option(
                    "distance",
                    "From the centre of rotation to the star",
                    "A quarter of the field is 0.25.",
                    Figure.of(Unit.FIELD_WIDTHS))
            .required();
    private static final Argument<Double> TOWARD = Argument.option(
                    "toward",
                    "Direction, as on a clock face",
                    "12 is the top; 4.5 is half past four.",
                    Figure.of(Unit.CLOCK_HOURS))
            .required();
    private static final Argument<Double> SIGMA = Argument.option(
                    "sigma", "Uncertainty of the position", "1 sigma.", Figure.of(Unit.FIELD_WIDTHS))
            .otherwise(TypedText.figure(StillPoint.USUAL_SIGMA_OF_FIELD))
            .seldom();

    private final Action action = SightingActions.of(
                    "still",
                    "Find the centre of rotation",
                    "Point the tube along the polar axis and swing it back and forth in right ascension. The whole"
                            + " field turns around one point. Where is the star from it?",
                    CentreOfRotationEntry::sighting,
                    STAR,
                    DISTANCE,
                    TOWARD,
                    OpticArguments.WITH,
                    OpticArguments.FIELD,
                    OpticArguments.VIEW,
                    OpticArguments.TURNED,
                    SIGMA)
            .forExample(
                    "with Polaris a quarter of the finder's field to the lower right",
                    "polaris --distance 0.25 --toward 4.5 --with finder");

    @Override
    public Action action() {
        return action;
    }

    @Override
    public List<SightingKind> answers() {
        return List.of(SightingKind.STILL_POINT);
    }

    private static Sighting sighting(Entries entries, ActionContext context) {
        Angle field = OpticArguments.field(entries, context.rig());
        return new StillPoint(
                Replacement.time(entries, context),
                entries.of(STAR),
                ReadLength.ofField(entries.of(DISTANCE), field),
                new ClockDirection(entries.of(TOWARD)),
                OpticArguments.view(entries, context.rig()),
                field.times(entries.given(SIGMA).orElse(StillPoint.USUAL_SIGMA_OF_FIELD)));
    }

    @Override
    public Optional<Map<String, String>> typed(Sighting logged) {
        if (!(logged instanceof StillPoint still) || still.distance().unit() != ReadLength.Unit.FIELDS) {
            return Optional.empty();
        }
        Angle field = still.distance().perUnit();
        Map<String, String> values = new LinkedHashMap<>(Map.of(
                STAR.name(), TypedText.body(still.star()),
                DISTANCE.name(), TypedText.figure(still.distance().count()),
                TOWARD.name(), TypedText.figure(still.toward().hours()),
                OpticArguments.FIELD.name(), TypedText.degrees(field)));
        OpticArguments.putView(values, still.view());
        return Optional.of(TypedText.withSigma(
                values, still.sigma().radians() / field.radians(), StillPoint.USUAL_SIGMA_OF_FIELD));
    }

    @Override
    public SightingSketch sketch(Entries entries, NightEvent.Begun begun, Instant now) {
        double fields = entries.given(DISTANCE).orElse(0.25);
        if (!(fields >= 0 && fields <= 1)) {
            throw new InputRefused("that is outside the field", "give a fraction of the field width");
        }
        return new SightingSketch.Still(
                SightingActions.label(entries),
                fields,
                new ClockDirection(entries.given(TOWARD).orElse(4.5)),
                OpticArguments.viewIfKnown(entries, begun.rig()),
                begun.site().isNorthern());
    }
}
