package polewright.image.star;

/**
 * Normal equations of a point source by power sums. Every derivative of a Gaussian or Moffat profile is the model value of
 * a pixel, or that value times the falloff of the profile, times powers of the distance (dx, dy) from the centre. A row of
 * pixels therefore needs 13 sums over powers of dx; powers of dy enter falling per row.
 */
final class PointMoments {
    // Sums of weight × model² × fall² × dx^i × dy^j, named by i and j.
    private double ff20;
    private double ff11;
    private double ff02;
    private double ff30;
    private double ff21;
    private double ff12;
    private double ff03;
    private double ff40;
    private double ff31;
    private double ff22;
    private double ff13;
    private double ff04;
    // Sums of weight × model² × fall, and of weight × model².
    private double fm10;
    private double fm01;
    private double fm20;
    private double fm11;
    private double fm02;
    private double mm00;
    // Sums of weight × residual × model × fall, and of weight × residual × model.
    private double gf10;
    private double gf01;
    private double gf20;
    private double gf11;
    private double gf02;
    private double gm00;

    /**
     * Sums over pixels, which are mostly consecutive in rows.
     *
     * @param x centre, column
     * @param y centre, row
     * @param pixels how many elements of the arrays are used
     * @param column of each pixel
     * @param row of each pixel
     * @param light measured in each pixel, counts
     * @param model of each pixel, counts
     * @param weight of each pixel, one over its variance
     * @param fall of each pixel: one for a Gaussian, {@code 1 / (1 + q/2β)} for Moffat's profile
     * @return chi square
     */
    double sum(
            double x,
            double y,
            int pixels,
            int[] column,
            int[] row,
            double[] light,
            double[] model,
            double[] weight,
            double[] fall) {
        clear();
        double chiSquare = 0;
        int k = 0;
        while (k < pixels) {
            int line = row[k];
            double a0 = 0;
            double a1 = 0;
            double a2 = 0;
            double a3 = 0;
            double a4 = 0;
            double c0 = 0;
            double c1 = 0;
            double c2 = 0;
            double e0 = 0;
            double g0 = 0;
            double g1 = 0;
            double g2 = 0;
            double h0 = 0;
            while (k < pixels && row[k] == line) {
                double dx = column[k] - x;
                double m = model[k];
                double residual = light[k] - m;
                double weightedResidual = weight[k] * residual;
                chiSquare += weightedResidual * residual;
                double wm = weight[k] * m;
                double f = fall[k];
                double modelSquared = wm * m;
                double falling = modelSquared * f;
                double falling2 = falling * f;
                double falling2X = falling2 * dx;
                double falling2Xx = falling2X * dx;
                double falling2Xxx = falling2Xx * dx;
                a0 += falling2;
                a1 += falling2X;
                a2 += falling2Xx;
                a3 += falling2Xxx;
                a4 += falling2Xxx * dx;
                double fallingX = falling * dx;
                c0 += falling;
                c1 += fallingX;
                c2 += fallingX * dx;
                e0 += modelSquared;
                double gradient = weightedResidual * m;
                double gradientF = gradient * f;
                double gradientX = gradientF * dx;
                g0 += gradientF;
                g1 += gradientX;
                g2 += gradientX * dx;
                h0 += gradient;
                k++;
            }
            double dy = line - y;
            double dy2 = dy * dy;
            double dy3 = dy2 * dy;
            ff20 += a2;
            ff11 += a1 * dy;
            ff02 += a0 * dy2;
            ff30 += a3;
            ff21 += a2 * dy;
            ff12 += a1 * dy2;
            ff03 += a0 * dy3;
            ff40 += a4;
            ff31 += a3 * dy;
            ff22 += a2 * dy2;
            ff13 += a1 * dy3;
            ff04 += a0 * dy2 * dy2;
            fm10 += c1;
            fm01 += c0 * dy;
            fm20 += c2;
            fm11 += c1 * dy;
            fm02 += c0 * dy2;
            mm00 += e0;
            gf10 += g1;
            gf01 += g0 * dy;
            gf20 += g2;
            gf11 += g1 * dy;
            gf02 += g0 * dy2;
            gm00 += h0;
        }
        return chiSquare;
    }

    private void clear() {
        ff20 = 0;
        ff11 = 0;
        ff02 = 0;
        ff30 = 0;
        ff21 = 0;
        ff12 = 0;
        ff03 = 0;
        ff40 = 0;
        ff31 = 0;
        ff22 = 0;
        ff13 = 0;
        ff04 = 0;
        fm10 = 0;
        fm01 = 0;
        fm20 = 0;
        fm11 = 0;
        fm02 = 0;
        mm00 = 0;
        gf10 = 0;
        gf01 = 0;
        gf20 = 0;
        gf11 = 0;
        gf02 = 0;
        gm00 = 0;
    }

    /**
     * Writes the equations of centre and height.
     *
     * @param xx element of the inverse of the moments, like {@code xy} and {@code yy}
     */
    void writeCentre(NormalEquations into, double height, double xx, double xy, double yy) {
        into.put(0, 0, xx * xx * ff20 + 2 * xx * xy * ff11 + xy * xy * ff02);
        into.put(1, 0, xx * xy * ff20 + (xx * yy + xy * xy) * ff11 + xy * yy * ff02);
        into.put(1, 1, xy * xy * ff20 + 2 * xy * yy * ff11 + yy * yy * ff02);
        into.put(2, 0, (xx * fm10 + xy * fm01) / height);
        into.put(2, 1, (xy * fm10 + yy * fm01) / height);
        into.put(2, 2, mm00 / (height * height));
        into.putGradient(0, xx * gf10 + xy * gf01);
        into.putGradient(1, xy * gf10 + yy * gf01);
        into.putGradient(2, gm00 / height);
    }

    /** Writes the equations of the three elements of the shape, after those of centre and height. */
    void writeShape(NormalEquations into, double height, double xx, double xy, double yy) {
        into.put(3, 0, -(xx * ff30 + xy * ff21) / 2);
        into.put(3, 1, -(xy * ff30 + yy * ff21) / 2);
        into.put(3, 2, -fm20 / (2 * height));
        into.put(3, 3, ff40 / 4);
        into.put(4, 0, -(xx * ff21 + xy * ff12));
        into.put(4, 1, -(xy * ff21 + yy * ff12));
        into.put(4, 2, -fm11 / height);
        into.put(4, 3, ff31 / 2);
        into.put(4, 4, ff22);
        into.put(5, 0, -(xx * ff12 + xy * ff03) / 2);
        into.put(5, 1, -(xy * ff12 + yy * ff03) / 2);
        into.put(5, 2, -fm02 / (2 * height));
        into.put(5, 3, ff22 / 4);
        into.put(5, 4, ff13 / 2);
        into.put(5, 5, ff04 / 4);
        into.putGradient(3, -gf20 / 2);
        into.putGradient(4, -gf11);
        into.putGradient(5, -gf02 / 2);
    }
}
