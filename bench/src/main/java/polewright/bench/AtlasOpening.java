package polewright.bench;

import java.util.Locale;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;

/** Opening the star atlas once in a fresh process: how long it takes, and how much heap it then occupies. */
public final class AtlasOpening {
    private static final double BYTES_PER_MEGABYTE = 1e6;

    private AtlasOpening() {}

    public static void main(String[] args) {
        long before = liveBytes();
        long start = System.nanoTime();
        StarAtlas atlas = StarAtlas.bundled();
        long opened = System.nanoTime();
        int found = atlas.starsWithin(Angle.ZERO, Angle.ofDegrees(89), Angle.ofDegrees(3), 12)
                .size();
        long searched = System.nanoTime();
        long after = liveBytes();
        System.out.printf(
                Locale.ROOT,
                "opened %,d stars in %.0f ms; first search of 3 degrees at the pole: %d stars in %.0f ms; heap held %.1f MB%n",
                atlas.size(),
                (opened - start) / 1e6,
                found,
                (searched - opened) / 1e6,
                (after - before) / BYTES_PER_MEGABYTE);
    }

    @SuppressWarnings("System.gc") // the figure wanted is what remains after collection
    private static long liveBytes() {
        System.gc();
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }
}
