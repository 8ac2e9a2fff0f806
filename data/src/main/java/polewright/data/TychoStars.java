package polewright.data;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import polewright.sky.InputRefused;

/** All stars of the Tycho-2 index files, each once. */
final class TychoStars {
    static final String PACKAGES =
            "astrometry-data-tycho2-07-littleendian or astrometry-data-tycho2-10-19-littleendian (Debian)";

    private static final double SAME_ENTRY_ARCSEC = 0.05;

    private final double[] vectors;
    private final float[] magnitudes;
    private final StarPlaces places;

    private TychoStars(double[] vectors, float[] magnitudes) {
        this.vectors = vectors;
        this.magnitudes = magnitudes;
        this.places = new StarPlaces(vectors);
    }

    /** All positions, for searching; numbered like the stars. */
    StarPlaces places() {
        return places;
    }

    /** Tycho VT. */
    double magnitude(int star) {
        return magnitudes[star];
    }

    int size() {
        return magnitudes.length;
    }

    /** ICRS, J2000.0 except for some of the brightest stars. */
    double[] unit(int star) {
        return Arrays.copyOfRange(vectors, 3 * star, 3 * star + 3);
    }

    /** Reads the file with the most stars whole, then the additional stars of the others. */
    static TychoStars read(List<Path> folders) throws IOException {
        List<Path> files = new ArrayList<>();
        for (Path folder : folders) {
            try (DirectoryStream<Path> found =
                    Files.newDirectoryStream(Sources.existing(folder, PACKAGES), "index-tycho2-*.littleendian.fits")) {
                found.forEach(files::add);
            }
        }
        if (files.isEmpty()) {
            throw new InputRefused(
                    "no index-tycho2-*.littleendian.fits in " + folders, "fetch and unpack the packages " + PACKAGES);
        }
        // The number in the name increases as the files get sparser.
        files.sort((a, b) -> a.getFileName().compareTo(b.getFileName()));
        TychoStars all = of(TychoIndexFile.read(files.get(0)));
        for (Path file : files.subList(1, files.size())) {
            all = all.with(TychoIndexFile.read(file));
        }
        return all;
    }

    private static TychoStars of(TychoIndexFile file) {
        return new TychoStars(file.vectors(), file.magnitudes());
    }

    private TychoStars with(TychoIndexFile other) {
        List<Integer> fresh = new ArrayList<>();
        for (int i = 0; i < other.size(); i++) {
            if (places.nearestWithin(SAME_ENTRY_ARCSEC, other.unit(i)) < 0) {
                fresh.add(i);
            }
        }
        if (fresh.isEmpty()) {
            return this;
        }
        double[] moreVectors = Arrays.copyOf(vectors, vectors.length + 3 * fresh.size());
        float[] moreMagnitudes = Arrays.copyOf(magnitudes, size() + fresh.size());
        for (int i = 0; i < fresh.size(); i++) {
            System.arraycopy(other.unit(fresh.get(i)), 0, moreVectors, vectors.length + 3 * i, 3);
            moreMagnitudes[size() + i] = other.magnitude(fresh.get(i));
        }
        return new TychoStars(moreVectors, moreMagnitudes);
    }
}
