// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.Arrays;
import java.util.TreeMap;
import tubwright.engine.shape.Loft;
import tubwright.engine.shape.Section;
import tubwright.engine.shape.SkinEvaluator;
import tubwright.engine.shape.SkinPoint;
import tubwright.engine.shape.TubShape;

/**
 * The right half of the skin: a counts cells along x, b cells round the girth from bottom centre to top centre. Inside a
 * strip the cells of its two half-arcs and of its straight are of equal length each, so that grid lines follow the
 * tangent lines of the fillets wherever these are worth a cell.
 */
final class SkinChart implements Chart {
    final TubShape shape;
    final SkinEvaluator evaluator;
    /** Stations of the lines a = 0, 1, ... */
    final double[] station;

    private final Hold[] hold;
    /** First cell of every strip, and the number of all. */
    final int[] stripStart;

    private final int[] lowArcCells;
    private final int[] straightCells;
    private final int[] highArcCells;
    private final double size;
    private final double cellTurn;
    private final SkinPoint point = new SkinPoint();

    /**
     * @param settings size and turn of cells
     * @param lines stations that must be grid lines with how firmly they hold
     */
    SkinChart(TubShape shape, MeshSettings settings, TreeMap<Double, Hold> lines) {
        this.shape = shape;
        size = settings.size();
        cellTurn = settings.cellTurn();
        evaluator = shape.evaluator();
        int strips = shape.strips().size();
        stripStart = new int[strips + 1];
        lowArcCells = new int[strips];
        straightCells = new int[strips];
        highArcCells = new int[strips];
        int samples = 8 * (shape.frames().size() - 1);
        for (int k = 0; k < strips; k++) {
            double low = 0;
            double high = 0;
            double straight = 0;
            double lowTurn = 0;
            double highTurn = 0;
            for (int i = 0; i <= samples; i++) {
                double x = shape.front() + (shape.rear() - shape.front()) * i / samples;
                Section s = shape.section(x);
                low = Math.max(low, s.halfArc(k));
                high = Math.max(high, s.halfArc(k + 1));
                straight = Math.max(straight, s.length(k) - s.halfArc(k) - s.halfArc(k + 1));
                lowTurn = Math.max(lowTurn, Math.abs(s.turn(k)) / 2);
                highTurn = Math.max(highTurn, Math.abs(s.turn(k + 1)) / 2);
            }
            lowArcCells[k] = arcCells(low, lowTurn);
            highArcCells[k] = arcCells(high, highTurn);
            if (lowArcCells[k] == 0) {
                straight += low;
            }
            if (highArcCells[k] == 0) {
                straight += high;
            }
            straightCells[k] = (int) Math.ceil(straight / size - 0.25);
            if (straightCells[k] == 0 && straight > 0.2 * size) {
                straightCells[k] = 1;
            }
            if (lowArcCells[k] + straightCells[k] + highArcCells[k] == 0) {
                straightCells[k] = 1;
            }
            stripStart[k + 1] = stripStart[k] + lowArcCells[k] + straightCells[k] + highArcCells[k];
        }
        double[] at = lines.keySet().stream().mapToDouble(Double::doubleValue).toArray();
        double[] xs = new double[4096];
        Hold[] hs = new Hold[4096];
        int n = 0;
        xs[0] = at[0];
        hs[0] = Hold.EDGE;
        for (int i = 0; i + 1 < at.length; i++) {
            double gap = at[i + 1] - at[i];
            Section s = shape.section((at[i] + at[i + 1]) / 2);
            double girth = s.perimeter() / 2 / stripStart[strips];
            double h = Math.clamp(girth * 1.25, 0.6 * size, size);
            int parts = Math.max(1, (int) Math.ceil(gap / h - 0.25));
            while (n + parts + 1 >= xs.length) {
                xs = Arrays.copyOf(xs, 2 * xs.length);
                hs = Arrays.copyOf(hs, xs.length);
            }
            for (int j = 1; j <= parts; j++) {
                n++;
                xs[n] = j == parts ? at[i + 1] : at[i] + gap * j / parts;
                hs[n] = j == parts ? lines.get(at[i + 1]) : Hold.NONE;
            }
        }
        hs[n] = Hold.EDGE;
        station = Arrays.copyOf(xs, n + 1);
        hold = Arrays.copyOf(hs, n + 1);
    }

    private int arcCells(double arc, double turn) {
        if (arc < size / 8 || turn < 1e-3) {
            return 0;
        }
        int bySize = (int) Math.ceil(arc / size - 0.25);
        int byTurn = (int) Math.ceil(turn / cellTurn - 0.1);
        int most = Math.max(1, (int) (arc / (size / 4)));
        return Math.max(1, Math.max(bySize, Math.min(byTurn, most)));
    }

    @Override
    public int cellsA() {
        return station.length - 1;
    }

    @Override
    public int cellsB() {
        return stripStart[stripStart.length - 1];
    }

    @Override
    public Hold holdA(int i) {
        return hold[i];
    }

    @Override
    public Hold holdB(int j) {
        if (j == 0 || j == cellsB()) {
            return Hold.EDGE;
        }
        return Arrays.binarySearch(stripStart, j) >= 0 ? Hold.HARD : Hold.NONE;
    }

    double x(double a) {
        int i = Math.clamp((int) a, 0, station.length - 2);
        double u = a - i;
        return u == 0 ? station[i] : station[i] + u * (station[i + 1] - station[i]);
    }

    /** Chart coordinate a of a station. */
    double a(double x) {
        int i = Arrays.binarySearch(station, x);
        if (i >= 0) {
            return i;
        }
        i = Math.clamp(-i - 2, 0, station.length - 2);
        return i + (x - station[i]) / (station[i + 1] - station[i]);
    }

    /** Strip that holds b; on a boundary the upper one. */
    int strip(double b) {
        int k = 0;
        while (k < stripStart.length - 2 && b >= stripStart[k + 1]) {
            k++;
        }
        return k;
    }

    /** Bay that holds a. */
    int bay(double a) {
        return evaluator.bay(x(a));
    }

    @Override
    public void position(double a, double b, double[] xyz) {
        evaluate(a, b, strip(b), bay(a), point);
        xyz[0] = point.x;
        xyz[1] = b == 0 || b == cellsB() ? 0 : point.y;
        xyz[2] = point.z;
    }

    /** The surface at (a, b) as seen from a strip and a bay; b is held inside the strip. */
    void evaluate(double a, double b, int strip, int bay, SkinPoint p) {
        Section s = evaluator.around(x(a), bay, strip);
        s.at(strip, fraction(s, strip, b), p);
    }

    /** Fraction of the strip's arc length at b. */
    private double fraction(Section s, int k, double b) {
        double c = Math.clamp(b - stripStart[k], 0.0, stripStart[k + 1] - stripStart[k]);
        int low = lowArcCells[k];
        int mid = straightCells[k];
        int high = highArcCells[k];
        double length = s.length(k);
        double least = 0.3 * Math.min(size, length / (low + mid + high));
        double arcLow = low == 0 ? 0 : Math.max(s.halfArc(k), low * least);
        double arcHigh = high == 0 ? 0 : Math.max(s.halfArc(k + 1), high * least);
        double rest = length - (low == 0 ? 0 : s.halfArc(k)) - (high == 0 ? 0 : s.halfArc(k + 1));
        double straight = mid == 0 ? 0 : Math.max(rest, mid * least);
        double all = arcLow + straight + arcHigh;
        double done;
        if (c < low) {
            done = arcLow * c / low;
        } else if (c < low + mid) {
            done = arcLow + straight * (c - low) / mid;
        } else {
            done = high == 0 ? all : all - arcHigh * (low + mid + high - c) / high;
        }
        return Math.clamp(done / all, 0.0, 1.0);
    }

    boolean creased() {
        return shape.loft() == Loft.RULED;
    }
}
