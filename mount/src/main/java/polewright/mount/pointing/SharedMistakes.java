package polewright.mount.pointing;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** The usual mistakes in the site, the time or the display that affect all centrings. */
final class SharedMistakes {
    private static final List<Integer> HOURS = List.of(1, -1, 12, -12);

    private SharedMistakes() {}

    static List<SharedMistake> of(Site site, List<CentredStar> stars) {
        List<SharedMistake> mistakes = new ArrayList<>();
        for (int hours : HOURS) {
            mistakes.add(all(
                    "every time was " + LikelyMistakes.hours(hours),
                    site,
                    stars,
                    s -> s.withAt(s.at().plus(Duration.ofHours(hours)))));
        }
        if (Math.abs(site.longitude().degrees()) <= 90) {
            mistakes.add(new SharedMistake(
                    "the site's latitude and longitude were swapped",
                    site(site, site.longitude(), site.latitude()),
                    stars));
        }
        mistakes.add(new SharedMistake(
                site.longitude().radians() > 0
                        ? "the site's longitude was west, with a minus"
                        : "the site's longitude was east, without a minus",
                site(site, site.latitude(), site.longitude().negated()),
                stars));
        mistakes.add(new SharedMistake(
                site.latitude().radians() > 0
                        ? "the site's latitude was south, with a minus"
                        : "the site's latitude was north, without a minus",
                site(site, site.latitude().negated(), site.longitude()),
                stars));
        if (stars.stream().allMatch(s -> s.display() instanceof MountDisplay.RightAscension)) {
            mistakes.add(
                    all("every display counted from the other equinox", site, stars, SharedMistakes::otherEquinox));
        }
        return mistakes;
    }

    private static Site site(Site site, Angle latitude, Angle longitude) {
        return new Site(latitude, longitude, site.heightMetres());
    }

    private static SharedMistake all(
            String cause, Site site, List<CentredStar> stars, UnaryOperator<CentredStar> change) {
        return new SharedMistake(cause, site, stars.stream().map(change).toList());
    }

    private static CentredStar otherEquinox(CentredStar star) {
        if (star.display() instanceof MountDisplay.RightAscension read) {
            return star.withDisplay(
                    new MountDisplay.RightAscension(read.rightAscension(), read.declination(), !read.isJ2000()));
        }
        return star;
    }
}
