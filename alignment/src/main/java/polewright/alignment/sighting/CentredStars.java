package polewright.alignment.sighting;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import polewright.mount.pointing.CentredStar;
import polewright.mount.pointing.CentringCheck;
import polewright.mount.pointing.PointingFit;
import polewright.mount.pointing.PointingOutcome;
import polewright.mount.rig.MountKind;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * Stars that were centred while the axis stood still, and what the mount read each time. Together they tell where the axis
 * points, beside the mount's other errors; one or two tell nothing of it.
 *
 * @param mount its kind: which errors it can have
 * @param stars in order of time
 */
public record CentredStars(MountKind mount, List<CentredStar> stars) implements Sighting {
    /** Fewer leave the zeros and the axis open. */
    public static final int FEWEST = 3;

    public CentredStars {
        stars = List.copyOf(stars);
    }

    /**
     * The sighting that these are, if they tell anything.
     *
     * @return empty when fewer than {@link #FEWEST} can be believed
     */
    public static Optional<CentredStars> of(MountKind kind, Site site, Weather weather, List<CentredStar> stars) {
        if (stars.size() < FEWEST) {
            return Optional.empty();
        }
        // What was meant instead does not matter here: what contradicts the others is left out either way.
        List<CentredStar> believed = CentringCheck.believed(kind, site, weather, stars);
        return believed.size() < FEWEST ? Optional.empty() : Optional.of(new CentredStars(kind, believed));
    }

    @Override
    public Sighting movedBy(Duration shift) {
        return new CentredStars(
                mount, stars.stream().map(star -> star.movedBy(shift)).toList());
    }

    @Override
    public Instant at() {
        return stars.get(0).at();
    }

    @Override
    public String kind() {
        return "centred stars";
    }

    @Override
    public AxisModel model(Site site, Weather weather) {
        PointingOutcome outcome = PointingFit.of(
                mount,
                site,
                stars.stream().map(star -> star.reduced(site, weather)).toList());
        if (!(outcome instanceof PointingOutcome.Fitted fitted)) {
            throw new IllegalStateException("no stars were centred");
        }
        return AxisModel.of(fitted.model().axisEstimate());
    }

    @Override
    public List<LineOfSight> linesOfSight(Site site, Weather weather) {
        return stars.stream()
                .map(star -> LineOfSight.atBody(star.star(), star.at(), site, weather))
                .toList();
    }

    @Override
    public Optional<SharedInstrument> sharedInstrument() {
        return Optional.empty();
    }

    /** None of the whole: a star that was mistaken has been left out. */
    @Override
    public List<Misreading> misreadings() {
        return List.of();
    }
}
