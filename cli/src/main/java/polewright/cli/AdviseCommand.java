package polewright.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import polewright.alignment.advice.Adviser;
import polewright.alignment.advice.RankedSighting;
import polewright.operations.Workbench;
import polewright.report.json.ExposureJson;
import polewright.report.json.NightJson;
import polewright.report.json.ZoneJson;
import polewright.report.scene.WedgeScene;
import polewright.report.text.AdviceWords;
import polewright.report.text.ExposureWords;
import polewright.report.text.FixWords;
import polewright.report.text.PoleStarWords;
import polewright.report.text.RankingWords;
import polewright.report.text.ScrewWords;
import polewright.report.text.SkipWords;
import polewright.report.text.ZoneWords;
import polewright.session.ExposureOutlook;
import polewright.session.NightState;

@Command(name = "advise", description = "What to do next and why, the alternatives, and exposure limits.")
final class AdviseCommand implements Callable<Integer> {
    private final Workbench workbench;

    @Option(names = "--wedge", paramLabel = "FILE.svg", description = "Also draw the wedge and the screws to turn.")
    private @Nullable Path wedge;

    @Mixin
    private ZonePictureOption picture;

    @Mixin
    private LogOption log;

    @Mixin
    private Output output;

    AdviseCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        NightState night = FixCommand.tonight(log, workbench);
        List<RankedSighting> ranking = Adviser.ranking(night.situation());
        List<ExposureOutlook> exposures = ExposureOutlook.of(night);
        if (output.isJson()) {
            ObjectNode node = NightJson.advice(night);
            node.set("allowance", ZoneJson.of(night.allowance()));
            node.set("ranking", NightJson.ranking(ranking));
            node.set("exposures", ExposureJson.of(exposures));
            output.print(workbench, node);
        } else {
            output.report(workbench, AdviceWords.of(night));
            output.report(workbench, SkipWords.hint(night));
            output.report(workbench, PoleStarWords.of(night));
            output.say(workbench, FixWords.beforeAdvice(night));
            output.say(workbench, ScrewWords.findings(night.fix().state()));
            output.report(workbench, FixWords.doubts(night));
            output.say(workbench, RemedyWords.of(night));
            output.report(workbench, ZoneWords.chance(night));
            output.say(workbench, ExposureWords.of(exposures));
            output.say(workbench, RankingWords.of(ranking, night.advice()));
        }
        picture.draw(workbench, output, night);
        if (wedge != null) {
            ResultFile.write(wedge, WedgeScene.svg(night, picture.palette()).getBytes(StandardCharsets.UTF_8));
            output.mention(workbench, "Drawn: " + wedge);
        }
        return 0;
    }
}
