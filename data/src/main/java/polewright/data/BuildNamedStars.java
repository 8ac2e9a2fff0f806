package polewright.data;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import polewright.sky.atlas.NamedStar;
import polewright.sky.place.CatalogueStar;

/** Builds {@code named-stars.tsv}. */
public final class BuildNamedStars {
    private BuildNamedStars() {}

    public static void main(String[] arguments) throws IOException {
        Sources sources = Sources.of(arguments);
        TychoStars tycho = TychoStars.read(sources.tycho());
        NamedStarRows rows = new NamedStarRows(HipparcosStars.read(sources.celestial()));
        List<NamedStar> all = new ArrayList<>(rows.withMotion(MotionStars.read(sources.motions())));
        int withMotion = all.size();
        all.addAll(rows.withoutMotion(all, tycho));
        all.sort(NamedStarRows.BRIGHTEST_FIRST);
        rows.notes().forEach(System.out::println);
        System.out.println(withMotion + " with motion, " + (all.size() - withMotion) + " without");
        TableFile.write(
                sources.out().resolve("named-stars.tsv"),
                List.of(
                        "Bright and named stars, ICRS, epoch J2000.0. Made by polewright.data.BuildNamedStars.",
                        "Places and motions: sefstars.txt of swe-basic-data (CC0-1.0). Names, designations, and places"
                                + " without motion: d3-celestial (BSD-3-Clause) and Tycho-2.",
                        "names, designations, RA deg, Dec deg, pmRA cos Dec mas/yr, pmDec mas/yr, parallax mas,"
                                + " radial velocity km/s, V"),
                all.stream().map(BuildNamedStars::row).toList());
    }

    private static String row(NamedStar star) {
        CatalogueStar place = star.place();
        return String.join(
                "\t",
                TableFile.list(star.names()),
                TableFile.list(star.designations()),
                TableFile.number(place.rightAscension().degrees(), 8),
                TableFile.number(place.declination().degrees(), 8),
                star.motionKnown() ? TableFile.number(place.properMotionRaMasPerYear(), 3) : "",
                star.motionKnown() ? TableFile.number(place.properMotionDecMasPerYear(), 3) : "",
                star.motionKnown() ? TableFile.number(place.parallaxMas(), 3) : "",
                star.motionKnown() ? TableFile.number(place.radialVelocityKmPerSecond(), 2) : "",
                TableFile.number(star.magnitude(), 2));
    }
}
