package polewright.session;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Experience;
import polewright.mount.rig.FinishSense;
import polewright.mount.rig.ForkClearance;
import polewright.mount.rig.MountKind;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.mount.rig.RightAscensionDrive;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewGeometry;
import polewright.mount.rig.ScrewOrder;
import polewright.mount.rig.ScrewSense;
import polewright.mount.rig.TrackingRate;
import polewright.mount.rig.TravelLimits;
import polewright.mount.rig.Worm;
import polewright.sky.angle.Angle;

/** Rigs with every part and setting. */
final class RandomRigs {
    private final RandomValues values;
    private final Random random;

    RandomRigs(RandomValues values) {
        this.values = values;
        random = values.random();
    }

    Rig rig() {
        List<Optic> optics = new ArrayList<>();
        for (int i = random.nextInt(4); i > 0; i--) {
            optics.add(new Optic(
                    i + values.text(),
                    values.sigma(60),
                    values.view(),
                    random.nextBoolean() ? Optional.of(values.sigma(0.1)) : Optional.empty()));
        }
        List<Camera> cameras = new ArrayList<>();
        for (int i = random.nextInt(3); i > 0; i--) {
            cameras.add(new Camera(
                    "camera " + i + values.text(),
                    values.number(1, 20_000),
                    values.number(0.5, 100),
                    64 + random.nextInt(9000),
                    64 + random.nextInt(9000)));
        }
        return new Rig(
                values.text(),
                values.oneOf(new MountKind[] {MountKind.FORK_ON_WEDGE, MountKind.GERMAN, MountKind.TRACKER}),
                screw(random.nextBoolean() ? ScrewSense.LEFT : ScrewSense.RIGHT),
                screw(random.nextBoolean() ? ScrewSense.RAISES : ScrewSense.LOWERS),
                values.sigma(20),
                values.sigma(20),
                optics,
                cameras,
                values.oneOf(ScrewOrder.values()),
                new RightAscensionDrive(
                        values.oneOf(TrackingRate.values()),
                        new Worm(
                                values.sigma(0.1),
                                Duration.ofSeconds(10).plusNanos(random.nextLong(3_000_000_000_000L)))),
                travel(),
                random.nextBoolean()
                        ? Optional.empty()
                        : Optional.of(new Experience(
                                random.nextInt(9),
                                values.number(0.1, 2),
                                values.number(0.001, 1),
                                values.number(-1, 2),
                                values.number(0.001, 1),
                                random.nextInt(9),
                                new AxisOffset(values.signed(0.1), values.signed(0.1)),
                                values.sigma(1),
                                random.nextDouble(),
                                random.nextDouble())));
    }

    Screw screw(ScrewSense sense) {
        ScrewGeometry geometry = switch (random.nextInt(3)) {
            case 0 -> new ScrewGeometry.DegreesPerTurn(values.sigma(90));
            case 1 -> new ScrewGeometry.PushScrew(values.number(0.1, 20), values.number(1, 2000));
            default ->
                new ScrewGeometry.Turnbuckle(
                        values.number(200, 400),
                        values.number(200, 400),
                        values.number(210, 390),
                        values.signed(1.5),
                        values.number(0.1, 20));
        };
        return new Screw(
                geometry,
                sense,
                values.number(0.001, 2),
                values.number(0.001, 5),
                values.number(0, 20),
                values.oneOf(FinishSense.values()),
                random.nextBoolean());
    }

    TravelLimits travel() {
        if (random.nextBoolean()) {
            return TravelLimits.USUAL;
        }
        Optional<ForkClearance> fork = random.nextBoolean()
                ? Optional.empty()
                : Optional.of(new ForkClearance(
                        values.number(200, 400),
                        values.number(0, 500),
                        values.number(0, 900),
                        values.number(0, 150),
                        values.number(0, 150)));
        return new TravelLimits(
                Angle.ofDegrees(-values.number(0, 180)),
                new Angle(values.number(0, 3)),
                new Angle(values.number(0, 1.3)),
                fork);
    }
}
