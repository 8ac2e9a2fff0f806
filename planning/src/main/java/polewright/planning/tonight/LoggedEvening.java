package polewright.planning.tonight;

import java.time.Instant;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.sky.body.SkyBody;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** The evening to plan, from a night's log. */
public final class LoggedEvening {
    private LoggedEvening() {}

    /** The evening at the night's site with its rig, in mean weather for that height. */
    public static Evening of(NightState night, Instant now) {
        Site site = night.begun().site();
        return Evening.at(
                site, Weather.standardAt(site.heightMetres()), night.begun().rig(), night.horizon(), now, axis(night));
    }

    /** The axis of the fix; empty if unknown. */
    public static Optional<KnownAxis> axis(NightState night) {
        if (!night.fix().isDetermined()) {
            return Optional.empty();
        }
        return Optional.of(
                new KnownAxis(night.fix().state().offset(), night.fix().state().offsetCovariance()));
    }

    /** The targets wanted tonight. */
    public static List<SkyBody> wanted(NightState night) {
        return night.standing().stream()
                .map(logged -> logged.event())
                .filter(NightEvent.TargetWanted.class::isInstance)
                .map(event -> ((NightEvent.TargetWanted) event).target())
                .toList();
    }

    /** The lists plus the targets wanted, which replace their entries in the lists. */
    public static List<Target> targets(Collection<SkyBody> asked) {
        Map<String, Target> targets = new LinkedHashMap<>();
        Target.ofLists().forEach(target -> targets.put(target.label(), target));
        asked.forEach(body -> targets.put(body.label(), Target.wanted(body)));
        return List.copyOf(targets.values());
    }
}
