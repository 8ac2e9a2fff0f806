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
import polewright.sky.fields.FieldWriter;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * Stars centred while the axis was not moved, with the mount's reading each time. Together they determine the axis
 * along with the mount's other errors; one or two stars say nothing about it.
 *
 * @param mount its kind, which determines its possible errors
 * @param stars in time order
 */
public record CentredStars(MountKind mount, List<CentredStar> stars) implements Sighting {
    /** Fewer cannot separate the zero points from the axis. */
    public static final int FEWEST = 3;

    public CentredStars {
        stars = List.copyOf(stars);
    }

    /**
     * The sighting from these stars, if they determine the axis.
     *
     * @return empty when fewer than {@link #FEWEST} are plausible
     */
    public static Optional<CentredStars> of(MountKind kind, Site site, Weather weather, List<CentredStar> stars) {
        if (stars.size() < FEWEST) {
            return Optional.empty();
        }
        // The star meant instead does not matter here: outliers are left out either way.
        List<CentredStar> believed = CentringCheck.believed(kind, site, weather, stars);
        return believed.size() < FEWEST ? Optional.empty() : Optional.of(new CentredStars(kind, believed));
    }

    @Override
    public Sighting movedBy(Duration shift) {
        return new CentredStars(
                mount, stars.stream().map(star -> star.movedBy(shift)).toList());
    }

    @Override
    public Instant ended() {
        return stars.get(stars.size() - 1).at();
    }

    @Override
    public Sighting atCorrectedSite(SiteCorrection correction) {
        return this;
    }

    @Override
    public Sighting throughCorrectedOptic(OpticCorrection correction) {
        return this;
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
    public <R> R accept(Visitor<R> visitor) {
        return visitor.centredStars(this);
    }

    /** Never logged as a whole: each centring is an event of its own. */
    @Override
    public SightingFormat format() {
        throw notLogged();
    }

    @Override
    public void write(FieldWriter out) {
        throw notLogged();
    }

    private static IllegalStateException notLogged() {
        return new IllegalStateException("centred stars are logged one by one");
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
    public boolean isReadByEye() {
        return false;
    }

    @Override
    public boolean isEnteredByHand() {
        return true;
    }

    @Override
    public Optional<InstrumentReading> instrumentReading() {
        return Optional.empty();
    }

    /** None for the set: a mistaken star has already been left out. */
    @Override
    public List<Misreading> misreadings() {
        return List.of();
    }
}
