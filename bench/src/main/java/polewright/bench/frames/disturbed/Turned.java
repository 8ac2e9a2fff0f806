package polewright.bench.frames.disturbed;

/** Rotations as 3 by 3 matrices, with the operations needed here. */
final class Turned {
    private Turned() {}

    /** About a unit vector by an angle, right-handed (O. Rodrigues 1840). */
    static double[][] about(double[] unit, double angle) {
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        double x = unit[0];
        double y = unit[1];
        double z = unit[2];
        return new double[][] {
            {c + x * x * (1 - c), x * y * (1 - c) - z * s, x * z * (1 - c) + y * s},
            {y * x * (1 - c) + z * s, c + y * y * (1 - c), y * z * (1 - c) - x * s},
            {z * x * (1 - c) - y * s, z * y * (1 - c) + x * s, c + z * z * (1 - c)}
        };
    }

    /** About a vector by its length. */
    static double[][] by(double[] vector) {
        double length = Math.sqrt(dot(vector, vector));
        return length == 0 ? about(new double[] {1, 0, 0}, 0) : about(scaled(1 / length, vector), length);
    }

    /** The second first, then the first. */
    static double[][] after(double[][] first, double[][] second) {
        double[][] product = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                for (int k = 0; k < 3; k++) {
                    product[i][j] += first[i][k] * second[k][j];
                }
            }
        }
        return product;
    }

    static double[] applied(double[][] turn, double[] v) {
        return new double[] {dot(turn[0], v), dot(turn[1], v), dot(turn[2], v)};
    }

    static double[] inverse(double[][] turn, double[] v) {
        double[] back = new double[3];
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k < 3; k++) {
                back[i] += turn[k][i] * v[k];
            }
        }
        return back;
    }

    static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    static double[] cross(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }

    static double[] scaled(double factor, double[] a) {
        return new double[] {factor * a[0], factor * a[1], factor * a[2]};
    }

    static double[] unit(double[] a) {
        return scaled(1 / Math.sqrt(dot(a, a)), a);
    }

    /** The unit quaternion x, y, z, w of the rotation of vectors (S. W. Shepperd 1978: by the largest of the four). */
    static double[] quaternion(double[][] m) {
        double trace = m[0][0] + m[1][1] + m[2][2];
        double[] squares = {1 + 2 * m[0][0] - trace, 1 + 2 * m[1][1] - trace, 1 + 2 * m[2][2] - trace, 1 + trace};
        int largest = 0;
        for (int i = 1; i < 4; i++) {
            largest = squares[i] > squares[largest] ? i : largest;
        }
        double r = Math.sqrt(squares[largest]);
        double h = 0.5 / r;
        return switch (largest) {
            case 0 -> new double[] {0.5 * r, (m[1][0] + m[0][1]) * h, (m[0][2] + m[2][0]) * h, (m[2][1] - m[1][2]) * h};
            case 1 -> new double[] {(m[1][0] + m[0][1]) * h, 0.5 * r, (m[2][1] + m[1][2]) * h, (m[0][2] - m[2][0]) * h};
            case 2 -> new double[] {(m[0][2] + m[2][0]) * h, (m[2][1] + m[1][2]) * h, 0.5 * r, (m[1][0] - m[0][1]) * h};
            default ->
                new double[] {(m[2][1] - m[1][2]) * h, (m[0][2] - m[2][0]) * h, (m[1][0] - m[0][1]) * h, 0.5 * r};
        };
    }
}
