package polewright.operations.work;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import polewright.alignment.work.VisualObservation;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Tick;
import polewright.operations.action.ArgumentType.Words;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/** Adds a visual observation to tonight's work, or changes the one of that name. */
public final class LookAction {
    private static final double USUAL_STAY_MINUTES = 15;

    private static final Argument<String> EYEPIECE =
            Argument.option("eyepiece", "Eyepiece", "One of the rig's, such as finder.", Words.plain("OPTIC"));
    private static final Argument<Double> FIELD =
            Argument.option("field", "True field, edge to edge", "Instead of the eyepiece.", Figure.of(Unit.DEGREES));
    private static final Argument<Double> STAY = Argument.option(
                    "stay",
                    "Time in the field",
                    "How long an object must stay in the field with the mount untouched.",
                    ItemArguments.MINUTES)
            .otherwise("15");
    private static final Argument<Double> GO_TO = Argument.option(
                    "go-to", "How far from the centre of the field a go-to may land", "", Figure.of(Unit.ARCMINUTES))
            .otherwise("any distance")
            .seldom();
    private static final Argument<Boolean> BY_HAND = Argument.option(
            "by-hand",
            "No go-to: pushed by hand from star to star",
            "The object is then kept in the middle half of the field.",
            new Tick());

    public static final Action LOOK = Action.of(
                    "allow-look",
                    List.of("allow", "look"),
                    "Add visual observing to tonight's work",
                    "",
                    LookAction::looked)
            .taking(ItemArguments.NAME, EYEPIECE, FIELD, STAY, GO_TO, BY_HAND)
            .taking(RegionArguments.ALL)
            .checkedBy((entries, context) -> RegionArguments.notices(entries, context, stay(entries)))
            .sentBy("Set it")
            .forExample("", "saturn --eyepiece reticle --stay 20 --target saturn");

    private LookAction() {}

    private static List<NightEvent> looked(Entries entries, ActionContext context) {
        Duration stay = stay(entries);
        VisualObservation look = new VisualObservation(
                ItemArguments.name(entries),
                field(entries, context.rig()),
                stay,
                finding(entries),
                RegionArguments.region(entries, context, stay));
        return List.of(TonightsWork.set(context.begun(), TonightsWork.with(WorkActions.items(context), look)));
    }

    private static Duration stay(Entries entries) {
        return ItemArguments.minutes(entries.given(STAY).orElse(USUAL_STAY_MINUTES));
    }

    private static VisualObservation.Finding finding(Entries entries) {
        boolean isByHand = entries.isTicked(BY_HAND);
        Optional<Double> goToArcmin = entries.given(GO_TO);
        if (goToArcmin.isPresent() && isByHand) {
            throw new InputRefused("a look is either by hand or with go-to", "leave out {by-hand} or {go-to}");
        }
        return goToArcmin
                .<VisualObservation.Finding>map(
                        arcmin -> new VisualObservation.Finding.GoTo(Angle.ofArcminutes(arcmin)))
                .orElseGet(() ->
                        isByHand ? new VisualObservation.Finding.ByHand() : new VisualObservation.Finding.Centred());
    }

    private static Angle field(Entries entries, Rig rig) {
        Optional<Double> fieldDeg = entries.given(FIELD);
        Optional<String> eyepiece = entries.given(EYEPIECE);
        if (fieldDeg.isPresent() && eyepiece.isPresent()) {
            throw new InputRefused("the field is given twice", "give {field} or {eyepiece}, only one of them");
        }
        if (fieldDeg.isPresent()) {
            return Angle.ofDegrees(fieldDeg.get());
        }
        String has = rig.optics().stream().map(Optic::name).collect(Collectors.joining(", "));
        String orOne = has.isEmpty() ? "" : ", or {eyepiece} as one of " + has;
        return eyepiece.map(name -> rig.optic(name)
                        .orElseThrow(() ->
                                new InputRefused("the rig has no optic called '" + name + "'", "give {field}" + orOne))
                        .field())
                .orElseThrow(() -> new InputRefused("the field is not known", "give {field}" + orOne));
    }
}
