package polewright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import polewright.operations.Workbench;
import polewright.operations.input.BodyFinder;
import polewright.report.json.WhereJson;
import polewright.report.text.SunCaution;
import polewright.report.text.WhereWords;
import polewright.session.event.NightEvent;
import polewright.sky.atlas.Constellation;
import polewright.sky.atlas.Constellations;
import polewright.sky.body.BodyPosition;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.LeapSeconds;

@Command(name = "where", description = "Show where a star, planet or object is in the sky.")
final class WhereCommand implements Callable<Integer> {
    private final Workbench workbench;

    @Parameters(
            paramLabel = "BODY",
            converter = BodyFinder.class,
            description =
                    "sun, moon, a planet, a star (vega, \"alp Lyr\"), an object (\"M 31\"), or RA,DEC in degrees.")
    private SkyBody body;

    @Mixin
    private EarthRotationOption earthRotation;

    @Mixin
    private SkyOptions sky;

    @Mixin
    private LogOption log;

    @Mixin
    private Output output;

    WhereCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        Optional<NightEvent.Begun> remembered =
                sky.givenSite().isPresent() ? Optional.empty() : log.lastBegun(workbench);
        ObservingMoment moment = sky.moment(workbench, remembered, earthRotation.ut1MinusUtcSeconds());
        BodyPosition seen = BodyPosition.of(body, moment);
        Constellation constellation = constellation(seen);
        List<String> notes = notes(seen);
        if (output.isJson()) {
            output.print(workbench, WhereJson.of(seen, constellation, notes));
        } else {
            output.say(workbench, WhereWords.of(seen, constellation));
            output.say(workbench, notes);
        }
        return 0;
    }

    private static Constellation constellation(BodyPosition seen) {
        CatalogueStar direction = seen.moment().catalogueDirection(seen.place());
        return Constellations.bundled().at(direction.rightAscension(), direction.declination());
    }

    private List<String> notes(BodyPosition seen) {
        List<String> notes = new ArrayList<>();
        if (body == SolarSystemBody.SUN) {
            notes.add("CARE  Never look at the Sun, or point tube or finder at it, without a proper solar filter.");
        } else {
            SunCaution.near(seen.moment(), seen.place()).forEach(remark -> notes.add(remark.line()));
        }
        LeapSeconds.note(seen.moment().time().utc()).ifPresent(notes::add);
        return notes;
    }
}
