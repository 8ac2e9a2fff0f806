package polewright.session;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import polewright.alignment.work.Guiding;
import polewright.alignment.work.ImagingRun;
import polewright.alignment.work.SkyRegion;
import polewright.alignment.work.VisualObservation;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkItem;
import polewright.mount.rig.Camera;
import polewright.sky.angle.Angle;

/** Random work for a night. */
final class RandomWork {
    private final RandomValues values;
    private final Random random;

    RandomWork(RandomValues values) {
        this.values = values;
        random = values.random();
    }

    Work work() {
        List<WorkItem> items = new ArrayList<>();
        for (int i = 1 + random.nextInt(3); i > 0; i--) {
            items.add(random.nextBoolean() ? look(i + values.text()) : shot(i + values.text()));
        }
        return new Work(items);
    }

    VisualObservation look(String name) {
        return new VisualObservation(
                name,
                values.sigma(60),
                Duration.ofNanos(1 + random.nextLong(43_200_000_000_000L)),
                finding(),
                region());
    }

    VisualObservation.Finding finding() {
        return switch (random.nextInt(3)) {
            case 0 -> new VisualObservation.Finding.GoTo(values.sigma(30));
            case 1 -> new VisualObservation.Finding.ByHand();
            default -> new VisualObservation.Finding.Centred();
        };
    }

    ImagingRun shot(String name) {
        Duration exposure = Duration.ofNanos(1 + random.nextLong(10_800_000_000_000L));
        return new ImagingRun(
                name,
                new Camera("camera " + values.text(), values.number(1, 20_000), values.number(0.5, 100), 1000, 700),
                region(),
                exposure,
                exposure.plusNanos(random.nextLong(10_000_000_000_000L)),
                random.nextBoolean() ? new Guiding.Unguided() : new Guiding.Guided(values.sigma(20)),
                Angle.ofArcseconds(values.number(0.06, 3000)));
    }

    SkyRegion region() {
        Angle from = values.signed(Math.PI);
        return random.nextBoolean()
                ? new SkyRegion.Above(Angle.ofDegrees(values.number(5, 85)), random.nextBoolean())
                : new SkyRegion.Track(values.text(), values.signed(Math.PI / 2), from, from.plus(values.sigma(120)));
    }
}
