package polewright.session.jsonl;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import polewright.alignment.work.Guiding;
import polewright.alignment.work.ImagingRun;
import polewright.alignment.work.SkyRegion;
import polewright.alignment.work.VisualObservation;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkItem;
import polewright.mount.rig.Camera;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;

/** Tonight's work. */
final class WorkJson {
    private WorkJson() {}

    private enum ItemKind {
        LOOK,
        SHOT
    }

    private enum RegionKind {
        TRACK,
        ABOVE
    }

    static void write(FieldWriter out, Work work) {
        out.list("items", work.items(), WorkJson::writeItem);
    }

    static Work read(FieldReader in) {
        List<WorkItem> items = in.list("items", WorkJson::readItem);
        return in.made(() -> new Work(items));
    }

    private static void writeItem(FieldWriter out, WorkItem item) {
        out.word("kind", item instanceof VisualObservation ? ItemKind.LOOK : ItemKind.SHOT)
                .text("name", item.name())
                .object("region", item.region(), WorkJson::writeRegion);
        if (item instanceof VisualObservation look) {
            out.angle("field_deg", look.field()).duration("stay_min", look.stay());
            if (look.finding() instanceof VisualObservation.Finding.GoTo goTo) {
                out.angle("go_to_within_arcmin", goTo.within());
            } else if (look.finding() instanceof VisualObservation.Finding.ByHand) {
                out.flag("by_hand", true);
            }
        } else if (item instanceof ImagingRun shot) {
            out.object("camera", shot.camera(), RigJson::writeCamera)
                    .duration("sub_exposure_s", shot.subExposure())
                    .duration("total_min", shot.total());
            if (shot.guiding() instanceof Guiding.Guided guided) {
                out.angle("guide_star_arcmin", guided.starDistance());
            }
            out.angle("tolerance_arcsec", shot.tolerance());
        }
    }

    private static WorkItem readItem(FieldReader in) {
        String name = in.text("name");
        SkyRegion region = in.object("region", WorkJson::readRegion);
        return switch (in.choice("kind", ItemKind.class)) {
            case LOOK -> {
                Angle field = in.angle("field_deg");
                Duration stay = in.duration("stay_min");
                VisualObservation.Finding finding = readFinding(in);
                yield in.made(() -> new VisualObservation(name, field, stay, finding, region));
            }
            case SHOT -> {
                Camera camera = in.object("camera", RigJson::readCamera);
                Duration sub = in.duration("sub_exposure_s");
                Duration total = in.duration("total_min");
                Optional<Angle> guideStar =
                        in.has("guide_star_arcmin") ? Optional.of(in.angle("guide_star_arcmin")) : Optional.empty();
                Angle tolerance = in.angle("tolerance_arcsec");
                yield in.made(() -> {
                    Guiding guiding =
                            guideStar.<Guiding>map(Guiding.Guided::new).orElseGet(Guiding.Unguided::new);
                    return new ImagingRun(name, camera, region, sub, total, guiding, tolerance);
                });
            }
        };
    }

    private static VisualObservation.Finding readFinding(FieldReader in) {
        boolean isByHand = in.has("by_hand") && in.flag("by_hand");
        if (!in.has("go_to_within_arcmin")) {
            return isByHand ? new VisualObservation.Finding.ByHand() : new VisualObservation.Finding.Centred();
        }
        Angle within = in.angle("go_to_within_arcmin");
        return in.made(() -> {
            if (isByHand) {
                throw new InputRefused("a look by hand has go_to_within_arcmin", "leave one of them out");
            }
            return new VisualObservation.Finding.GoTo(within);
        });
    }

    private static void writeRegion(FieldWriter out, SkyRegion region) {
        if (region instanceof SkyRegion.Track track) {
            out.word("kind", RegionKind.TRACK)
                    .text("label", track.label())
                    .angle("dec_deg", track.declination())
                    .angle("hour_angle_from_deg", track.from())
                    .angle("hour_angle_to_deg", track.to());
        } else if (region instanceof SkyRegion.Above above) {
            out.word("kind", RegionKind.ABOVE).angle("altitude_deg", above.lowestAltitude());
            if (above.toThePole()) {
                out.flag("to_the_pole", true);
            }
        } else {
            throw new IllegalStateException("no JSON for " + region.getClass());
        }
    }

    private static SkyRegion readRegion(FieldReader in) {
        return switch (in.choice("kind", RegionKind.class)) {
            case TRACK -> {
                String label = in.text("label");
                Angle declination = in.angle("dec_deg");
                Angle from = in.angle("hour_angle_from_deg");
                Angle to = in.angle("hour_angle_to_deg");
                yield in.made(() -> new SkyRegion.Track(label, declination, from, to));
            }
            case ABOVE -> {
                Angle altitude = in.angle("altitude_deg");
                boolean toThePole = in.has("to_the_pole") && in.flag("to_the_pole");
                yield in.made(() -> new SkyRegion.Above(altitude, toThePole));
            }
        };
    }
}
