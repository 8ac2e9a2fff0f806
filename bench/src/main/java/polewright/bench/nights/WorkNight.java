package polewright.bench.nights;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.allowance.WorkZone;
import polewright.alignment.allowance.ZoneEdge;
import polewright.alignment.allowance.ZoneFinder;
import polewright.alignment.allowance.ZoneOutcome;
import polewright.alignment.work.Work;
import polewright.bench.frames.Draw;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Rig;
import polewright.simulation.ActionCosts;
import polewright.simulation.HiddenWedge;
import polewright.simulation.PlainRoutine;
import polewright.simulation.RehearsedNight;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.body.SunGuard;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * A night ready to be played: user, hemisphere, site, date, rig, work, and how the mount was set down, all from one
 * seed.
 *
 * @param zone the true tolerance of the work: both players are judged by it
 */
record WorkNight(long seed, UserKind kind, boolean northern, WorkZone zone, RehearsedNight.Setting setting) {
    private static final List<NamedStar> STARS = NamedStars.bundled().all();
    private static final Instant FIRST_DAY = Instant.parse("2026-01-01T00:00:00Z");
    private static final double DARK_SUN_DEG = -8;
    private static final Duration LONG_NIGHT = Duration.ofHours(4);
    // Work that this accuracy does not satisfy needs another mount.
    private static final Angle FINEST = Angle.ofArcminutes(2);

    /** Users and hemispheres alternate from seed to seed. */
    static WorkNight of(long seed) {
        UserKind[] kinds = UserKind.values();
        UserKind kind = kinds[Math.floorMod(seed, kinds.length)];
        boolean northern = Math.floorMod(seed / kinds.length, 2) == 0;
        RandomGenerator random = random(seed, 0);
        Site site = Site.ofDegrees(
                (northern ? 1 : -1) * Draw.between(15, 65, random),
                Draw.between(-180, 180, random),
                Draw.between(0, 2000, random));
        Weather weather = Weather.standardAt(site.heightMetres());
        Rig rig = kind.rig(random);
        WorkZone zone = zone(site, weather, rig, kind, random);
        Angle distance = Angle.ofDegrees(Draw.between(1, 8, random));
        double direction = Draw.between(0, 2 * Math.PI, random);
        HiddenWedge wedge = HiddenWedge.of(
                site,
                rig,
                new AxisOffset(distance.times(Math.sin(direction)), distance.times(Math.cos(direction))),
                random);
        return new WorkNight(
                seed,
                kind,
                northern,
                zone,
                new RehearsedNight.Setting(
                        "random",
                        wedge,
                        new DiscAllowance(aboutThePole(zone)),
                        Optional.of(zone.work()),
                        ActionCosts.USUAL,
                        evening(site, weather, random),
                        STARS,
                        List.of()));
    }

    PlayedNight advised() {
        return PlayedNight.advised(RehearsedNight.play(setting, Optional.empty(), moment -> {}, random(seed, 1)), zone);
    }

    PlayedNight plain() {
        return PlayedNight.plain(PlainRoutine.play(setting, random(seed, 2)), zone);
    }

    /** The one figure that the work comes to: the largest tolerated disc about the pole. */
    Angle tolerated() {
        return setting.allowance().radius();
    }

    private static WorkZone zone(Site site, Weather weather, Rig rig, UserKind kind, RandomGenerator random) {
        while (true) {
            Work work = kind.work(rig, random);
            if (ZoneFinder.find(site, weather, rig, work) instanceof ZoneOutcome.Found found
                    && found.zone().contains(AxisOffset.NONE)
                    && aboutThePole(found.zone()).compareTo(FINEST) >= 0) {
                return found.zone();
            }
        }
    }

    private static Angle aboutThePole(WorkZone zone) {
        return zone.edges().stream()
                .map(WorkNight::fromThePole)
                .min(Angle::compareTo)
                .orElseThrow();
    }

    private static Angle fromThePole(ZoneEdge edge) {
        AxisOffset along = edge.to().minus(edge.from());
        double cross = edge.from().east().radians() * along.up().radians()
                - edge.from().up().radians() * along.east().radians();
        return new Angle(Math.abs(cross) / along.distance().radians());
    }

    /** About nine by the Sun, on a day when it is dark then and for hours afterwards. */
    private static Instant evening(Site site, Weather weather, RandomGenerator random) {
        while (true) {
            double hours = 24 * Math.floor(365 * random.nextDouble())
                    + 21
                    - site.longitude().hours();
            Instant from = FIRST_DAY.plusSeconds(Math.round(hours * 3600));
            if (isDark(site, weather, from) && isDark(site, weather, from.plus(LONG_NIGHT))) {
                return from;
            }
        }
    }

    private static boolean isDark(Site site, Weather weather, Instant at) {
        return SunGuard.at(ObservingMoment.of(site, SkyTime.of(at), weather))
                        .sun()
                        .altitude()
                        .degrees()
                < DARK_SUN_DEG;
    }

    /** A random stream of its own for the night and for each player. */
    private static RandomGenerator random(long seed, int stream) {
        return RandomGeneratorFactory.of("L64X128MixRandom").create(3 * seed + stream);
    }
}
