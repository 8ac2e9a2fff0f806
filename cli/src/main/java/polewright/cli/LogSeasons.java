package polewright.cli;

import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.input.SiteInput;
import polewright.operations.seasons.LoggedNights;
import polewright.planning.seasons.Pier;
import polewright.planning.seasons.Seasons;
import polewright.report.json.SeasonsJson;
import polewright.report.text.SeasonsWords;
import polewright.session.NightId;
import polewright.session.NightSummary;
import polewright.session.StandingEvents;
import polewright.session.event.NightEvent;
import polewright.sky.place.Site;
import polewright.store.NightLog;

@Command(
        name = "seasons",
        description = "Compare all nights at one site with one rig: how pier and wedge move.",
        footer = {
            "",
            "For a pier, or a tripod that stays in place. End each night with a sighting,",
            "and begin the next with one, before anything is turned.",
            "For example:",
            "  polewright log seasons --picture seasons.svg"
        })
final class LogSeasons implements Callable<Integer> {
    private final Workbench workbench;

    @Option(
            names = "--site",
            paramLabel = "LAT,LON",
            converter = SiteInput.class,
            description = "The site, with the rig last used there. Default: site and rig of --night.")
    private @Nullable Site site;

    @Mixin
    private NightOption chosen;

    @Mixin
    private LogOption log;

    @Mixin
    private SeasonsPicture picture;

    @Mixin
    private Output output;

    LogSeasons(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        try (NightLog opened = log.openExisting(workbench)) {
            Pier pier = site == null ? Pier.of(begun(opened, chosen.in(opened))) : pierAt(site, opened);
            LoggedNights nights = LoggedNights.of(pier, opened);
            Seasons seasons = Seasons.of(pier, nights.records());
            if (output.isJson()) {
                output.print(workbench, SeasonsJson.of(seasons));
            } else {
                output.show(workbench, SeasonsWords.table(seasons));
                output.say(workbench, SeasonsWords.of(seasons));
                output.say(workbench, SeasonsWords.leftOut(nights));
            }
            picture.draw(workbench, output, seasons);
        }
        return 0;
    }

    private static Pier pierAt(Site site, NightLog opened) {
        return opened.nights().stream()
                .map(NightSummary::id)
                .map(night -> begun(opened, night))
                .filter(begun -> new Pier(site, begun.rig().name()).isAt(begun.site()))
                .findFirst()
                .map(Pier::of)
                .orElseThrow(() -> new OperationFailed(
                        "no night in the log was at that site. See polewright log nights, or leave out --site for"
                                + " the last"
                                + " night's site."));
    }

    private static NightEvent.Begun begun(NightLog opened, NightId night) {
        return StandingEvents.beginning(opened.events(night))
                .orElseThrow(
                        () -> new OperationFailed("night " + night.number() + " has no beginning. Choose another."));
    }
}
