package polewright.operations.sighting;

import java.util.List;
import polewright.alignment.sighting.Sighting;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Words;
import polewright.operations.action.Entries;
import polewright.operations.action.LooksMistaken;
import polewright.operations.action.Unit;
import polewright.operations.input.BodyFinder;
import polewright.session.ImplausibleReading;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.body.SkyBody;

/** What the entries of all sightings have in common. */
final class SightingActions {
    static final Argument<Double> SIGMA_DEG = Argument.option(
                    "sigma", "Uncertainty", "1 sigma.", Figure.of(Unit.DEGREES))
            .seldom();
    static final Argument<SkyBody> STAR = Argument.positional(
                    "star", "Star", "Such as polaris, rigel, or \"alp Lyr\".", new Words<>("STAR", BodyFinder::named))
            .required();

    private SightingActions() {}

    /** Turns what was entered into a sighting. */
    @FunctionalInterface
    interface Reading {
        Sighting of(Entries entries, ActionContext context);
    }

    static Action of(String id, String title, String intro, Reading reading, Argument<?>... arguments) {
        return Action.of(id, List.of("sight", id), title, intro, (entries, context) -> enter(reading, entries, context))
                .taking(arguments)
                .taking(Replacement.INSTEAD_OF)
                .sentBy("Log this sighting")
                .at(Action.Timing.MEASURED)
                .askingIfMistaken();
    }

    private static List<NightEvent> enter(Reading reading, Entries entries, ActionContext context) {
        Sighting sighting = reading.of(entries, context);
        if (!context.isConfirmed()) {
            ImplausibleReading.of(
                            sighting,
                            context.begun(),
                            context.before().fix().state().axis())
                    .ifPresent(far -> {
                        throw new LooksMistaken(new LooksMistaken.Doubt.FarOff(
                                sighting, far, context.begun().site()));
                    });
        }
        return List.of(Replacement.event(
                new NightEvent.SightingTaken(sighting), entries.given(Replacement.INSTEAD_OF), context.night()));
    }

    static Angle sigma(Entries entries, Angle usual) {
        return entries.given(SIGMA_DEG).map(Angle::ofDegrees).orElse(usual);
    }

    /** An uncertainty argument with its usual value. */
    static Argument<Double> usually(Angle usual) {
        return SIGMA_DEG.otherwise(TypedText.degrees(usual));
    }

    /** The label of the star on a sketch. */
    static String label(Entries entries) {
        String name = entries.given(STAR).map(SkyBody::label).orElse("the star");
        return name.length() > 20 ? name.substring(0, 20) : name;
    }
}
