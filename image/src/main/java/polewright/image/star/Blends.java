package polewright.image.star;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Stars wider than others nearby are blended with an unresolved neighbour. Their centre is that of both: a second star
 * with a fraction q of the light, at distance d, moves it by q d and adds q (1 − q) d² to its second moment. Fractions
 * of a tenth to a fifth are the usual case, so the squared shift is about 0.15 of the excess moment.
 */
final class Blends {
    private static final double MOVED_PER_MOMENT = 0.15;
    private static final double PLAINLY = 3;
    // Natural variation of shapes, and their deviation from a Gaussian or Moffat profile.
    private static final double USUAL_SPREAD = 0.03;
    private static final double STARS_A_CELL = 3;
    private static final int FEWEST = 6;

    private final List<MeasuredStar> telling;
    private final Neighbourhood near;

    /** @param area of the frame, square pixels */
    Blends(List<MeasuredStar> stars, double area) {
        telling = stars.stream().filter(Blends::tells).toList();
        near = new Neighbourhood(telling, Math.sqrt(STARS_A_CELL * area / Math.max(1, telling.size())));
    }

    /** The star, with a larger position uncertainty if it is wider than those around it. */
    FoundStar judged(MeasuredStar measured) {
        if (!tells(measured) || telling.size() < FEWEST) {
            return measured.star();
        }
        List<MeasuredStar> about = new ArrayList<>();
        near.forEachAbout(measured, i -> about.add(telling.get(i)));
        List<MeasuredStar> others = about.size() < FEWEST ? telling : about;
        Fit fit = measured.fit();
        double usualXx = middle(others, StarShape::xx);
        double usualYy = middle(others, StarShape::yy);
        double moreXx = fit.shape().xx() - usualXx;
        double moreXy = fit.shape().xy() - middle(others, StarShape::xy);
        double moreYy = fit.shape().yy() - usualYy;
        // The excess moment in the direction where it is largest.
        double most = (moreXx + moreYy) / 2 + Math.hypot((moreXx - moreYy) / 2, moreXy);
        double usual = (usualXx + usualYy) / 2;
        // Sigma of a moment: twice the centre's, in units of the width.
        double chance = 2 * Math.sqrt(Math.max(fit.varianceX(), fit.varianceY()) * usual);
        return most > PLAINLY * chance + USUAL_SPREAD * usual
                ? withLargerSigma(measured.star(), Math.max(0, moreXx), Math.max(0, moreYy))
                : measured.star();
    }

    private static FoundStar withLargerSigma(FoundStar star, double moreXx, double moreYy) {
        return new FoundStar(
                star.x(),
                star.y(),
                Math.sqrt(star.sigmaX() * star.sigmaX() + MOVED_PER_MOMENT * moreXx),
                Math.sqrt(star.sigmaY() * star.sigmaY() + MOVED_PER_MOMENT * moreYy),
                star.flux(),
                star.peakToNoise(),
                star.fwhm(),
                star.elongation(),
                star.longAxisRad(),
                star.saturated());
    }

    private static double middle(List<MeasuredStar> stars, ToDoubleFunction<StarShape> moment) {
        double[] ordered = stars.stream()
                .mapToDouble(m -> moment.applyAsDouble(m.fit().shape()))
                .sorted()
                .toArray();
        return ordered[ordered.length / 2];
    }

    private static boolean tells(MeasuredStar measured) {
        return measured.fit().freeShape() && !measured.star().saturated();
    }
}
