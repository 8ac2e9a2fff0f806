package polewright.data;

import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.SkyCells;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.place.CatalogueStar;

/** Builds {@code star-atlas.bin}, whose format is described by {@link StarAtlas}. */
public final class BuildStarAtlas {
    /** Any entry this near to a bright star is that star. */
    private static final double SAME_STAR_ARCSEC = 2.5;

    /**
     * An entry this near to another, and about as bright, is the same star, either as a blend or displaced by proper
     * motion.
     */
    private static final double ALIKE_ARCSEC = 10;

    private static final double ALIKE_MAGNITUDES = 1;

    private static final double EMPTY_ROW_ARCSEC = 0.01;

    private static final double OLD_ENTRY_ARCSEC = 90;
    private static final double OLD_ENTRY_MAGNITUDES = 0.6;

    /** Fainter stars of similar magnitude are too numerous to decide. */
    private static final double OLD_ENTRY_FAINTEST = 9;

    /** From the epoch of some Tycho-2 entries, 1991.25, to J2000.0. */
    private static final double YEARS_OF_OLD_ENTRIES = -8.75;

    private BuildStarAtlas() {}

    public static void main(String[] arguments) throws IOException {
        Sources sources = Sources.of(arguments);
        TychoStars tycho = TychoStars.read(sources.tycho());
        HipparcosStars hipparcos = HipparcosStars.read(sources.celestial());
        List<NamedStar> bright =
                new ArrayList<>(new NamedStarRows(hipparcos).withMotion(MotionStars.read(sources.motions())));
        List<NamedStar> companions = Companions.of(bright, hipparcos);
        companions.forEach(star -> System.out.println("companion " + star.designations() + " V " + star.magnitude()));
        bright.addAll(companions);
        bright.sort(NamedStarRows.BRIGHTEST_FIRST);

        BitSet replaced = emptyRows(tycho);
        System.out.println("empty rows " + replaced.cardinality());
        replaced.or(entriesOf(bright, tycho));
        List<HipparcosStars.Star> fillings = fillings(hipparcos, bright, tycho);
        for (HipparcosStars.Star star : fillings) {
            replaced.or(oldEntriesOf(star, hipparcos, tycho));
        }
        CellStars cells = new CellStars();
        for (int i = 0; i < tycho.size(); i++) {
            if (!replaced.get(i)) {
                cells.add(tycho.unit(i), tycho.magnitude(i));
            }
        }
        for (HipparcosStars.Star star : fillings) {
            cells.add(star.unit(), star.magnitude());
        }
        System.out.println("Tycho-2 " + tycho.size() + ", replaced " + replaced.cardinality() + " by " + bright.size()
                + " bright, filled " + fillings.size());
        Path file = sources.out().resolve("star-atlas.bin");
        write(file, bright, cells);
        System.out.println(file + ": " + (bright.size() + cells.size()) + " stars, " + Files.size(file) + " bytes");
    }

    /** Rows without a position have exactly 0h, 0°. */
    private static BitSet emptyRows(TychoStars tycho) {
        BitSet rows = new BitSet(tycho.size());
        tycho.places().within(EMPTY_ROW_ARCSEC, StarPlaces.unit(0, 0), rows::set);
        return rows;
    }

    /** Entries of a fast star at its 1991 position: as bright as it, and not another Hipparcos star. */
    private static BitSet oldEntriesOf(HipparcosStars.Star star, HipparcosStars hipparcos, TychoStars tycho) {
        BitSet entries = new BitSet(tycho.size());
        tycho.places().within(OLD_ENTRY_ARCSEC, star.unit(), i -> {
            boolean alike = Math.abs(tycho.magnitude(i) - star.magnitude()) <= OLD_ENTRY_MAGNITUDES;
            if (alike
                    && star.magnitude() <= OLD_ENTRY_FAINTEST
                    && hipparcos.places().nearestWithin(SAME_STAR_ARCSEC, tycho.unit(i)) < 0) {
                System.out.println("HIP " + star.number() + " moved from its place of 1991.25");
                entries.set(i);
            }
        });
        return entries;
    }

    private static BitSet entriesOf(List<NamedStar> bright, TychoStars tycho) {
        BitSet entries = new BitSet(tycho.size());
        for (NamedStar star : bright) {
            for (double years : new double[] {0, YEARS_OF_OLD_ENTRIES}) {
                double[] unit = moved(star.place(), years);
                tycho.places().within(ALIKE_ARCSEC, unit, i -> {
                    boolean here = tycho.places().arcsecFrom(i, unit) <= SAME_STAR_ARCSEC;
                    boolean alike = Math.abs(tycho.magnitude(i) - star.magnitude()) <= ALIKE_MAGNITUDES;
                    if (here || alike) {
                        entries.set(i);
                    }
                });
            }
        }
        return entries;
    }

    private static double[] moved(CatalogueStar star, double years) {
        double cosDec = star.declination().cos();
        double masPerDegree = 3600 * 1000.0;
        return StarPlaces.unit(
                star.rightAscension().degrees() + star.properMotionRaMasPerYear() * years / masPerDegree / cosDec,
                star.declination().degrees() + star.properMotionDecMasPerYear() * years / masPerDegree);
    }

    /** Hipparcos stars that are neither in Tycho-2 nor among the bright stars. */
    private static List<HipparcosStars.Star> fillings(
            HipparcosStars hipparcos, List<NamedStar> bright, TychoStars tycho) {
        double[] brightVectors = new double[3 * bright.size()];
        for (int i = 0; i < bright.size(); i++) {
            System.arraycopy(moved(bright.get(i).place(), 0), 0, brightVectors, 3 * i, 3);
        }
        StarPlaces brightPlaces = new StarPlaces(brightVectors);
        List<HipparcosStars.Star> fillings = new ArrayList<>();
        for (HipparcosStars.Star star : hipparcos.stars()) {
            boolean[] known = {brightPlaces.nearestWithin(ALIKE_ARCSEC, star.unit()) >= 0};
            tycho.places().within(ALIKE_ARCSEC, star.unit(), i -> {
                boolean here = tycho.places().arcsecFrom(i, star.unit()) <= SAME_STAR_ARCSEC;
                boolean alike = Math.abs(tycho.magnitude(i) - star.magnitude()) <= ALIKE_MAGNITUDES;
                known[0] |= here || alike;
            });
            if (!known[0]) {
                fillings.add(star);
            }
        }
        return fillings;
    }

    static void write(Path file, List<NamedStar> bright, CellStars stars) throws IOException {
        Files.createDirectories(file.toAbsolutePath().getParent());
        try (DataOutputStream out = new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(file)))) {
            out.write(StarAtlas.MAGIC.getBytes(StandardCharsets.US_ASCII));
            out.writeInt(bright.size());
            out.writeInt(SkyCells.count());
            out.writeInt(stars.size());
            for (NamedStar star : bright) {
                CatalogueStar place = star.place();
                out.writeDouble(place.rightAscension().degrees());
                out.writeDouble(place.declination().degrees());
                out.writeDouble(place.properMotionRaMasPerYear());
                out.writeDouble(place.properMotionDecMasPerYear());
                out.writeDouble(place.parallaxMas());
                out.writeDouble(place.radialVelocityKmPerSecond());
                out.writeDouble(star.magnitude());
            }
            stars.writeTo(out);
        }
    }
}
