package polewright.bench.nights;

import java.time.Duration;
import java.util.List;
import java.util.random.RandomGenerator;
import polewright.alignment.work.ImagingRun;
import polewright.alignment.work.SkyRegion;
import polewright.alignment.work.VisualObservation;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkItem;
import polewright.alignment.work.WorkPreset;
import polewright.bench.frames.Draw;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewGeometry;
import polewright.mount.rig.ScrewSense;
import polewright.sky.angle.Angle;

/** The kinds of user: what they measure with, and what for. Cameras and wedges are typical (common practice). */
enum UserKind {
    EYE_ONLY("eye only") {
        @Override
        List<Camera> cameras(RandomGenerator random) {
            return List.of();
        }

        /** Casual looking, planets, or go-tos that must land in a high-power field without a finder. */
        @Override
        WorkItem item(Rig rig, RandomGenerator random) {
            return switch (random.nextInt(3)) {
                case 0 -> WorkPreset.CASUAL_LOOK.with(rig);
                case 1 -> WorkPreset.PLANETS.with(rig);
                default ->
                    new VisualObservation(
                            "go-to at high power",
                            Angle.ofDegrees(0.3),
                            Duration.ofMinutes(10),
                            new VisualObservation.Finding.GoTo(Angle.ofArcminutes(Draw.between(5, 12, random))),
                            SkyRegion.Above.THIRTY_DEGREES);
            };
        }
    },
    GUIDE_CAMERA("guide camera") {
        @Override
        List<Camera> cameras(RandomGenerator random) {
            return List.of(new Camera("guide camera", Draw.between(120, 300, random), 3.75, 1280, 960));
        }

        /** The pictures are taken with another camera, which takes none for alignment. */
        @Override
        WorkItem item(Rig rig, RandomGenerator random) {
            Camera pictures = new Camera("pictures", Draw.between(350, 900, random), 4.3, 5200, 3500);
            return shot(pictures, random);
        }
    },
    MAIN_TUBE("camera on the main tube") {
        @Override
        List<Camera> cameras(RandomGenerator random) {
            return List.of(new Camera("camera", Draw.between(900, 2000, random), 4.3, 5200, 3500));
        }

        @Override
        WorkItem item(Rig rig, RandomGenerator random) {
            return shot(rig.cameras().get(0), random);
        }
    };

    private final String words;

    UserKind(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }

    /** The cameras to measure with. */
    abstract List<Camera> cameras(RandomGenerator random);

    abstract WorkItem item(Rig rig, RandomGenerator random);

    Work work(Rig rig, RandomGenerator random) {
        return new Work(List.of(item(rig, random)));
    }

    /** A fork on a wedge, its screw gains known to 10 to 30 %, with backlash, on a tilted base. */
    Rig rig(RandomGenerator random) {
        Rig typical = Rig.typicalForkOnWedge();
        return new Rig(
                words,
                typical.kind(),
                screw(random.nextBoolean() ? ScrewSense.RIGHT : ScrewSense.LEFT, random),
                screw(random.nextBoolean() ? ScrewSense.RAISES : ScrewSense.LOWERS, random),
                Angle.ofDegrees(Draw.between(0.5, 2, random)),
                Angle.ofArcminutes(Draw.between(0.5, 1.5, random)),
                typical.optics(),
                cameras(random));
    }

    /** A quarter of a minute to two minutes unguided, or three to fifteen guided. */
    private static ImagingRun shot(Camera camera, RandomGenerator random) {
        boolean guided = random.nextBoolean();
        double seconds = guided ? Draw.logBetween(180, 900, random) : Draw.logBetween(15, 120, random);
        return (guided ? WorkPreset.LONG_GUIDED_SUBS : WorkPreset.SHORT_SUBS)
                .with(camera)
                .withSubExposure(Duration.ofSeconds(Math.round(seconds)));
    }

    private static Screw screw(ScrewSense sense, RandomGenerator random) {
        return new Screw(
                new ScrewGeometry.PushScrew(Draw.between(1, 1.5, random), Draw.between(150, 250, random)),
                sense,
                Draw.between(0.1, 0.3, random),
                Draw.between(0.02, 0.05, random),
                Draw.between(0, 0.25, random));
    }
}
