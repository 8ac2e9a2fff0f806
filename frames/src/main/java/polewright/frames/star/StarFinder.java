package polewright.frames.star;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import polewright.frames.Frame;

/**
 * Finds the stars of a frame, with nothing told of its optics or detector.
 *
 * <pre>
 *   Frame ─▶ SkyMesh ─▶ PeakFinder (a narrow filter) ─▶ UsualShape ─▶ PeakFinder (the stars' own width)
 *         ─▶ GaussianFit of each peak ─▶ Impostor sorts out what no lens drew ─▶ StarList
 * </pre>
 */
public final class StarFinder {
    private static final double SCOUT_SIGMA = 1.0;
    private static final int MOST_ROUNDS = 3;
    private static final double NEAR_ENOUGH = 0.15;

    private StarFinder() {}

    /** The stars of a frame, brightest first; none where it has none. */
    public static StarList find(Frame frame) {
        return find(frame, SearchSettings.USUAL);
    }

    /** The stars of a frame, looked for as told. */
    public static StarList find(Frame frame, SearchSettings settings) {
        float full = frame.saturation();
        SkyMesh mesh = SkyMesh.of(frame, full);
        if (mesh.isBlank() || Math.min(frame.width(), frame.height()) < 8) {
            return new StarList(frame.width(), frame.height(), List.of());
        }
        PeakFinder finder = new PeakFinder(frame, mesh);
        StarShape usual = StarShape.round(SCOUT_SIGMA);
        PeakFinder.Peaks found = finder.find(new PointFilter(SCOUT_SIGMA), settings.threshold(), b -> true);
        for (int round = 0; round < MOST_ROUNDS; round++) {
            CutoutMaker cutouts = new CutoutMaker(frame, mesh, full, Math.max(1, found.noise()));
            StarShape closer = UsualShape.of(found.peaks(), cutouts, NoiseLaw.SKY_ALONE, usual);
            double change = closer.sigma() / usual.sigma();
            usual = closer;
            if (Math.abs(Math.log(change)) < NEAR_ENOUGH) {
                break;
            }
            found = finder.find(new PointFilter(usual.sigma()), settings.threshold(), b -> true);
        }
        double noise = Math.max(1, found.noise());
        List<Peak> peaks = found.peaks().stream()
                .map(p -> new Peak(p.x(), p.y(), (float) (p.height() / noise)))
                .filter(p -> p.height() >= settings.threshold())
                .toList();
        CutoutMaker cutouts = new CutoutMaker(frame, mesh, full, noise);
        NoiseLaw law = NoiseLaw.SKY_ALONE;
        for (int round = 0; round < 2; round++) {
            StarMeasurer measurer = new StarMeasurer(cutouts, usual, law);
            law = NoiseLaw.of(peaks.subList(0, Math.min(peaks.size(), 300)).parallelStream()
                    .map(measurer::leftover)
                    .flatMap(Optional::stream)
                    .toList());
        }
        StarMeasurer measurer = new StarMeasurer(cutouts, usual, law);
        List<FoundStar> stars = new ArrayList<>();
        int chunk = 1000;
        for (int from = 0;
                from < peaks.size() && stars.size() < settings.most() && from < 10 * settings.most();
                from += chunk) {
            stars.addAll(peaks.subList(from, Math.min(peaks.size(), from + chunk)).parallelStream()
                    .map(measurer::measure)
                    .flatMap(Optional::stream)
                    .toList());
        }
        stars.sort(Comparator.comparingDouble(FoundStar::flux).reversed());
        return new StarList(frame.width(), frame.height(), stars.subList(0, Math.min(stars.size(), settings.most())));
    }
}
