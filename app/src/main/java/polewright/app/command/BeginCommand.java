package polewright.app.command;

import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import polewright.app.Workbench;
import polewright.app.json.NightJson;
import polewright.app.text.AdviceWords;
import polewright.axis.allowance.Allowance;
import polewright.axis.allowance.DiscAllowance;
import polewright.axis.rig.Rig;
import polewright.night.NightState;
import polewright.night.event.LoggedEvent;
import polewright.night.event.NightEvent;
import polewright.night.log.NightId;
import polewright.night.log.NightLog;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

@Command(
        name = "begin",
        description = "Begin a night. Site and rig are remembered from the last one.",
        footer = {"", "For example:", "  polewright begin --site 54.60,-2.90,240 --name Larkfell"})
final class BeginCommand implements Callable<Integer> {
    private final Workbench workbench;

    @Option(names = "--name", paramLabel = "NAME", description = "What to call the site.")
    private @Nullable String siteName;

    @Option(
            names = "--allow",
            paramLabel = "ARCMIN",
            description = "How far off the pole the axis may be. Default: 5, which suits looking by eye.")
    private @Nullable Double allowArcmin;

    @Mixin
    private SkyOptions sky;

    @Mixin
    private RigOption rig;

    @Mixin
    private LogOption log;

    @Mixin
    private Output output;

    BeginCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        // All of it is known to be usable before a log is made for it.
        NightEvent.Begun begun = begun(log.lastBegun(workbench));
        try (NightLog opened = log.open(workbench)) {
            NightId night = opened.begin(begun, sky.at(workbench));
            LoggedEvent first = opened.events(night).get(0);
            NightState state = NightState.of(opened.events(night));
            var star = Suggestions.star(state, first.at());
            if (output.isJson()) {
                output.print(workbench, NightJson.afterEvent(first, state, star));
            } else {
                output.say(
                        workbench,
                        "Begun: " + begun.siteName() + ", " + begun.rig().name() + " ("
                                + begun.rig().kind().words() + "), allowed "
                                + begun.allowance().words() + ".");
                output.say(workbench, AdviceWords.of(state, star));
            }
        }
        return 0;
    }

    private NightEvent.Begun begun(Optional<NightEvent.Begun> remembered) {
        Site site = sky.site(remembered);
        boolean sameSite =
                remembered.map(NightEvent.Begun::site).filter(site::equals).isPresent();
        String name = siteName != null
                ? siteName
                : sameSite ? remembered.orElseThrow().siteName() : "a new site";
        Rig chosen = rig.rig(remembered);
        Allowance allowance = allowArcmin == null ? DiscAllowance.VISUAL : disc(allowArcmin);
        if (name.isBlank()) {
            throw new WrongUsage(
                    "the site's name is empty: give it one, such as --name Larkfell, or leave --name out.");
        }
        return new NightEvent.Begun(name, site, sky.weather(site), chosen, allowance);
    }

    private static Allowance disc(double arcmin) {
        return WrongUsage.unlessUsable(() -> new DiscAllowance(Angle.ofArcminutes(arcmin)));
    }
}
