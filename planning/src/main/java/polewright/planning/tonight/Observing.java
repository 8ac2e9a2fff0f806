package polewright.planning.tonight;

import java.time.Duration;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import polewright.alignment.work.Guiding;
import polewright.alignment.work.ImagingRun;
import polewright.alignment.work.VisualObservation;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkItem;
import polewright.alignment.work.WorkPreset;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;

/**
 * The purpose for which tonight's targets are chosen.
 *
 * @param purpose by eye or with the camera
 * @param kinds the kinds of work, at least one
 * @param field the telescope's field of view, edge to edge
 * @param turn how long each target is observed
 */
public record Observing(Purpose purpose, Set<WorkPreset> kinds, Angle field, Duration turn) {
    private static final Duration A_LOOK = Duration.ofMinutes(30);
    private static final Duration A_SERIES = Duration.ofMinutes(90);
    private static final Duration SHORTEST_SERIES = Duration.ofMinutes(45);
    private static final Duration LONGEST_SERIES = Duration.ofHours(3);
    // A wider one is a finder.
    private static final Angle WIDEST_EYEPIECE = Angle.ofDegrees(3);
    private static final Angle USUAL_FIELD = Angle.ofDegrees(0.8);
    /** An eyepiece with a smaller field is for planets (common practice: 150 times and more). */
    private static final Angle HIGH_POWER = Angle.ofDegrees(0.35);

    public Observing {
        kinds = Set.copyOf(kinds);
    }

    /**
     * From the rig, and from tonight's work if known.
     *
     * @param asked by eye or camera; empty to decide by the work, or by the rig if there is none
     */
    public static Observing of(Rig rig, Optional<Work> work, Optional<Purpose> asked) {
        List<WorkItem> items = work.map(Work::items).orElse(List.of());
        Purpose purpose = asked.orElseGet(() -> usual(rig, items));
        List<WorkItem> own =
                items.stream().filter(item -> purposeOf(item) == purpose).toList();
        Set<WorkPreset> kinds = EnumSet.noneOf(WorkPreset.class);
        own.forEach(item -> kinds.add(kind(item)));
        if (kinds.isEmpty()) {
            kinds.add(purpose == Purpose.EYES ? WorkPreset.CASUAL_LOOK : WorkPreset.SHORT_SUBS);
        }
        return new Observing(purpose, kinds, field(rig, purpose, own), turn(purpose, own));
    }

    private static Purpose usual(Rig rig, List<WorkItem> items) {
        if (items.isEmpty()) {
            return Purpose.usual(rig);
        }
        return items.stream().map(Observing::purposeOf).anyMatch(Purpose.CAMERA::equals)
                ? Purpose.CAMERA
                : Purpose.EYES;
    }

    private static Purpose purposeOf(WorkItem item) {
        return item instanceof ImagingRun ? Purpose.CAMERA : Purpose.EYES;
    }

    private static WorkPreset kind(WorkItem item) {
        if (item instanceof ImagingRun shot) {
            return shot.guiding() instanceof Guiding.Unguided ? WorkPreset.SHORT_SUBS : WorkPreset.LONG_GUIDED_SUBS;
        }
        if (item instanceof VisualObservation look && look.finding() instanceof VisualObservation.Finding.ByHand) {
            return WorkPreset.LOOK_BY_HAND;
        }
        boolean isHighPower =
                item.name().equals(WorkPreset.PLANETS.words()) || item.field().compareTo(HIGH_POWER) < 0;
        return isHighPower ? WorkPreset.PLANETS : WorkPreset.CASUAL_LOOK;
    }

    private static Angle field(Rig rig, Purpose purpose, List<WorkItem> items) {
        Stream<Angle> ofWork = items.stream().map(WorkItem::field);
        Stream<Angle> ofRig = purpose == Purpose.CAMERA
                ? WorkPreset.mainCamera(rig).map(Camera::field).stream()
                : rig.optics().stream().map(Optic::field).filter(field -> field.compareTo(WIDEST_EYEPIECE) <= 0);
        return ofWork.max(Comparator.naturalOrder())
                .or(() -> ofRig.max(Comparator.naturalOrder()))
                .orElse(USUAL_FIELD);
    }

    private static Duration turn(Purpose purpose, List<WorkItem> items) {
        if (purpose == Purpose.EYES) {
            return A_LOOK;
        }
        Duration longest = items.stream()
                .filter(ImagingRun.class::isInstance)
                .map(item -> ((ImagingRun) item).total())
                .max(Comparator.naturalOrder())
                .orElse(A_SERIES);
        return longest.compareTo(SHORTEST_SERIES) < 0
                ? SHORTEST_SERIES
                : longest.compareTo(LONGEST_SERIES) > 0 ? LONGEST_SERIES : longest;
    }
}
