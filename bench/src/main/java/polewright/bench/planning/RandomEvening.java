package polewright.bench.planning;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkPreset;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;
import polewright.planning.tonight.Evening;
import polewright.planning.tonight.Observing;
import polewright.planning.tonight.Target;
import polewright.planning.tonight.TargetFinder;
import polewright.planning.tonight.TargetOutcome;
import polewright.sky.angle.Angle;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.Horizon;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * An evening at a random site, date, Moon, work and horizon, and a few targets visible then, all from one seed.
 *
 * @param targets some of them requested
 */
public record RandomEvening(Evening evening, Observing observing, List<Target> targets) {
    private static final Instant FIRST_DAY = Instant.parse("2020-01-01T12:00:00Z");
    private static final int DAYS = 20 * 365;
    private static final double FAINTEST = 9.5;

    /**
     * The evening of this seed.
     *
     * @param count number of targets, if as many are visible
     */
    public static RandomEvening of(long seed, int count) {
        Random random = new Random(seed);
        double latitudeDeg = (seed % 2 == 0 ? 1 : -1) * random.nextDouble(5, 62);
        double longitudeDeg = random.nextDouble(-180, 180);
        Site site = Site.ofDegrees(latitudeDeg, longitudeDeg, random.nextDouble(0, 2000));
        // From local noon until midnight: by day the whole night is planned, later the rest of it.
        Instant now = FIRST_DAY
                .plus(Duration.ofDays(random.nextInt(DAYS)))
                .plusSeconds(Math.round(3600 * (random.nextDouble(12) - longitudeDeg / 15)));
        List<WorkPreset> presets = List.of(WorkPreset.values());
        WorkPreset preset = presets.get(random.nextInt(presets.size()));
        Rig rig = Rig.typicalForkOnWedge()
                .withCameras(List.of(new Camera("main", random.nextDouble(300, 2500), 3.76, 6000, 4000)));
        Evening evening =
                Evening.at(site, Weather.standardAt(site.heightMetres()), rig, skyline(random), now, Optional.empty());
        Observing observing = Observing.of(rig, Optional.of(new Work(List.of(preset.with(rig)))), Optional.empty());
        return new RandomEvening(evening, observing, targets(evening, observing, count, random));
    }

    private static Horizon skyline(Random random) {
        List<Horizon.Point> points = new ArrayList<>();
        int corners = random.nextInt(8);
        for (int i = 0; i < corners; i++) {
            points.add(new Horizon.Point(
                    Angle.ofDegrees(360.0 * i / corners),
                    Angle.ofDegrees(random.nextDouble(40) * random.nextDouble())));
        }
        return new Horizon(points);
    }

    /** The visible Moon and planets, three at most, and well-known objects; one in eight is requested. */
    private static List<Target> targets(Evening evening, Observing observing, int count, Random random) {
        List<Target> listed = new ArrayList<>(Target.ofLists().stream()
                .filter(target -> target.body() instanceof SolarSystemBody
                        || (target.renown() != Target.Renown.LISTED
                                && target.magnitude().orElse(99) < FAINTEST))
                .toList());
        Collections.shuffle(listed, random);
        TargetFinder finder = new TargetFinder(evening, observing);
        List<Target> drawn = new ArrayList<>();
        int bodies = 0;
        for (Target target : listed) {
            boolean isBody = target.body() instanceof SolarSystemBody;
            if (drawn.size() == count) {
                break;
            }
            if ((isBody && bodies == 3) || !(finder.find(target) instanceof TargetOutcome.Shows)) {
                continue;
            }
            bodies += isBody ? 1 : 0;
            drawn.add(random.nextInt(8) == 0 ? Target.wanted(target.body()) : target);
        }
        return drawn;
    }
}
