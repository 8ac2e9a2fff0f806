package polewright.operations.night;

import java.util.List;
import java.util.stream.Stream;
import polewright.operations.action.Action;
import polewright.operations.setup.BeginNight;
import polewright.operations.setup.RigActions;
import polewright.operations.setup.SiteActions;
import polewright.operations.setup.SkylineActions;
import polewright.operations.sighting.Centring;
import polewright.operations.sighting.SightingEntries;
import polewright.operations.sighting.SightingEntry;
import polewright.operations.work.LookAction;
import polewright.operations.work.ShotAction;
import polewright.operations.work.WorkActions;

/** All actions that begin a night or add to it. */
public final class NightActions {
    private static final List<Action> ALL = Stream.concat(
                    SightingEntries.all().stream().map(SightingEntry::action),
                    Stream.of(
                            BeginNight.BEGIN,
                            Centring.ACTION,
                            WedgeActions.TURN,
                            WedgeActions.CLAMP,
                            WedgeActions.UNCLAMP,
                            WedgeActions.KNOCK,
                            SkipAction.SKIP,
                            WorkActions.ALLOW,
                            LookAction.LOOK,
                            ShotAction.SHOT,
                            WorkActions.DROP,
                            SkylineActions.SKYLINE,
                            SkylineActions.OPEN_SKY,
                            SiteActions.CORRECT_SITE,
                            RigActions.CORRECT_RIG,
                            LogActions.NOTE,
                            LogActions.UNDO,
                            LogActions.RETIME,
                            TargetAction.TARGET))
            .toList();

    private NightActions() {}

    /** All of them, the sightings first. */
    public static List<Action> all() {
        return ALL;
    }
}
