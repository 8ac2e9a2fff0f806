package polewright.operations.night;

import java.util.List;
import polewright.operations.action.Action;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Words;
import polewright.operations.input.BodyFinder;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;

/** Adds a target for tonight. */
public final class TargetAction {
    private static final Argument<SkyBody> BODY = Argument.positional(
                    "body",
                    "What",
                    "moon, saturn, vega, M 31, or right ascension and declination in degrees.",
                    new Words<>("BODY", BodyFinder::named))
            .required();

    public static final Action TARGET = Action.of(
                    "target", List.of("target"), "Add a target for tonight", "", (entries, context) -> {
                        SkyBody body = entries.of(BODY);
                        if (body == SolarSystemBody.SUN) {
                            throw new InputRefused(
                                    "the Sun is not a target for the night", "it burns eyes and cameras. Name another");
                        }
                        return List.of(new NightEvent.TargetWanted(body));
                    })
            .taking(BODY)
            .sentBy("Set it");

    private TargetAction() {}
}
