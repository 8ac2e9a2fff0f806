package polewright.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.action.ActionContext;
import polewright.operations.input.SiteInput;
import polewright.report.text.AngleWords;
import polewright.session.DoubtfulSite;
import polewright.session.event.Correction;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

@Command(name = "site", description = "Print tonight's site, or correct it.", subcommands = SiteCommand.Correct.class)
final class SiteCommand implements Callable<Integer> {
    private final Workbench workbench;

    @Mixin
    private LogOption log;

    SiteCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        NightEvent.Begun begun = log.lastBegun(workbench)
                .orElseThrow(() -> new OperationFailed(
                        "no site is known yet. Begin a night with polewright begin --site LAT,LON."));
        workbench.out().println(begun.siteName() + ": " + AngleWords.site(begun.site()));
        workbench.out().flush();
        return 0;
    }

    @Command(
            name = "correct",
            description = {
                "Correct tonight's site.",
                "The night is worked out again from its beginning; nothing that was logged is lost."
            },
            footer = {
                "",
                "For example:",
                "  polewright site correct --site 54.60,-2.90,240",
                "  polewright site correct --other-longitude"
            })
    static final class Correct extends AppendingCommand {
        @Option(
                names = "--site",
                paramLabel = "LAT,LON[,HEIGHT]",
                converter = SiteInput.class,
                description = "Degrees, north and east positive; metres.")
        private @Nullable Site site;

        @Option(names = "--height", paramLabel = "M", description = "Correct only the height, in metres.")
        private @Nullable Double heightMetres;

        @Option(names = "--other-latitude", description = "The latitude has the wrong sign.")
        private boolean isOtherLatitude;

        @Option(names = "--other-longitude", description = "The longitude has the wrong sign.")
        private boolean isOtherLongitude;

        @Option(names = "--swapped", description = "Latitude and longitude were swapped.")
        private boolean isSwapped;

        private Optional<DoubtfulSite> doubtful = Optional.empty();

        Correct(Workbench workbench) {
            super(workbench, "site corrected");
        }

        @Override
        List<NightEvent> events(ActionContext context) {
            NightEvent.Begun begun = context.begun();
            boolean isPartOnly = heightMetres != null || isOtherLatitude || isOtherLongitude || isSwapped;
            if (site != null && isPartOnly) {
                throw new WrongUsage("a whole site and part of one cannot be combined. Give --site alone.");
            }
            if (site == null && !isPartOnly) {
                throw new WrongUsage(
                        "the site is missing. Add --site LAT,LON[,HEIGHT] (degrees, north and east positive;"
                                + " metres).");
            }
            Site corrected = site == null ? corrected(begun.site()) : site;
            if (corrected.equals(begun.site())) {
                throw new InputRefused("the site already has these values", "give the correct site");
            }
            doubtful = DoubtfulSite.of(corrected, bench().clock().getZone(), context.now(), Optional.empty());
            return List.of(new Correction.SiteCorrected(corrected));
        }

        private Site corrected(Site entered) {
            Angle latitude = isSwapped ? entered.longitude() : entered.latitude();
            Angle longitude = isSwapped ? entered.latitude() : entered.longitude();
            return new Site(
                    isOtherLatitude ? latitude.negated() : latitude,
                    isOtherLongitude ? longitude.negated() : longitude,
                    heightMetres == null ? entered.heightMetres() : heightMetres);
        }

        @Override
        List<String> notes() {
            return doubtful.filter(DoubtfulSite::isOddAnywhere)
                    .map(odd -> List.of("NOTE  " + SiteOptions.sentence(odd, bench())))
                    .orElse(List.of());
        }
    }
}
