package polewright.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import polewright.operations.Workbench;
import polewright.operations.input.BodyFinder;
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;

@Command(name = "target", description = "Add a target for tonight; polewright tonight plans it.")
final class TargetCommand extends AppendingCommand {
    @Parameters(
            paramLabel = "BODY",
            converter = BodyFinder.class,
            description = "moon, a planet, a star (vega, \"alp Lyr\"), an object (\"M 31\"), or RA,DEC in degrees.")
    private SkyBody body;

    TargetCommand(Workbench workbench) {
        super(workbench, "wanted tonight");
    }

    @Override
    NightEvent event(Workbench bench, NightEvent.Begun begun, NightState before) {
        if (body == SolarSystemBody.SUN) {
            throw new InputRefused("the Sun is not a target for the night", "it burns eyes and cameras. Name another");
        }
        return new NightEvent.TargetWanted(body);
    }

    @Override
    String logged() {
        return "wanted tonight: " + body.label();
    }
}
