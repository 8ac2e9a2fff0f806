package polewright.planning.tonight;

import java.time.Instant;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.alignment.fix.Fix;
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.sky.body.SkyBody;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** What a night's log tells of the evening that is planned. */
public final class LoggedEvening {
    private LoggedEvening() {}

    /** The evening at the night's site with its rig, in the usual air of that height. */
    public static Evening of(NightState night, Instant now) {
        Site site = night.begun().site();
        return Evening.at(
                site, Weather.standardAt(site.heightMetres()), night.begun().rig(), night.horizon(), now, axis(night));
    }

    /** Where the axis points; empty as long as that is not known. */
    public static Optional<KnownAxis> axis(NightState night) {
        if (night.fix() instanceof Fix.Underdetermined) {
            return Optional.empty();
        }
        return Optional.of(
                new KnownAxis(night.fix().state().offset(), night.fix().state().offsetCovariance()));
    }

    /** What was asked for tonight. */
    public static List<SkyBody> wanted(NightState night) {
        return night.standing().stream()
                .map(logged -> logged.event())
                .filter(NightEvent.TargetWanted.class::isInstance)
                .map(event -> ((NightEvent.TargetWanted) event).target())
                .toList();
    }

    /** The lists, and what was asked for, which takes the place of its like in the lists. */
    public static List<Target> targets(Collection<SkyBody> asked) {
        Map<String, Target> targets = new LinkedHashMap<>();
        Target.ofLists().forEach(target -> targets.put(target.label(), target));
        asked.forEach(body -> targets.put(body.label(), Target.wanted(body)));
        return List.copyOf(targets.values());
    }
}
