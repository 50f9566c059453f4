// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;

/** Draws a mesh so that a person can look at it: flat shaded, element edges, painter's order. */
public final class MeshPicture {
    private MeshPicture() {}

    /** Draws the elements chosen, seen from a direction given by azimuth and elevation in degrees. */
    public static void draw(Mesh mesh, IntPredicate which, double azimuth, double elevation, double[] window, File file)
            throws IOException {
        double az = Math.toRadians(azimuth);
        double el = Math.toRadians(elevation);
        double[] right = {-Math.sin(az), Math.cos(az), 0};
        double[] view = {Math.cos(az) * Math.cos(el), Math.sin(az) * Math.cos(el), Math.sin(el)};
        double[] up = {
            view[1] * right[2] - view[2] * right[1],
            view[2] * right[0] - view[0] * right[2],
            view[0] * right[1] - view[1] * right[0]
        };
        int[] chosen = IntStream.range(0, mesh.elementCount()).filter(which).toArray();
        double[] box = {1e9, -1e9, 1e9, -1e9};
        double[] depth = new double[mesh.elementCount()];
        for (int e : chosen) {
            for (int i = 0; i < mesh.cornerCount(e); i++) {
                int n = mesh.elementNodes()[4 * e + i];
                double u = dot(mesh, n, right);
                double v = dot(mesh, n, up);
                box[0] = Math.min(box[0], u);
                box[1] = Math.max(box[1], u);
                box[2] = Math.min(box[2], v);
                box[3] = Math.max(box[3], v);
                depth[e] += dot(mesh, n, view) / mesh.cornerCount(e);
            }
        }
        if (window.length == 4) {
            box = window;
        }
        int width = 1600;
        double scale = width / (box[1] - box[0]) * 0.96;
        int height = (int) Math.min(2400, (box[3] - box[2]) * scale / 0.96 + 40);
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setColor(Color.WHITE);
        g.fillRect(0, 0, width, height);
        g.setStroke(new BasicStroke(0.7f));
        int[] order = IntStream.of(chosen)
                .boxed()
                .sorted((a, b) -> Double.compare(depth[a], depth[b]))
                .mapToInt(Integer::intValue)
                .toArray();
        for (int e : order) {
            Path2D path = new Path2D.Double();
            for (int i = 0; i < mesh.cornerCount(e); i++) {
                int n = mesh.elementNodes()[4 * e + i];
                double u = (dot(mesh, n, right) - box[0]) * scale + width * 0.02;
                double v = height - 20 - (dot(mesh, n, up) - box[2]) * scale;
                if (i == 0) {
                    path.moveTo(u, v);
                } else {
                    path.lineTo(u, v);
                }
            }
            path.closePath();
            double[] nn = mesh.cornerNormals();
            double facing = nn[12 * e] * view[0] + nn[12 * e + 1] * view[1] + nn[12 * e + 2] * view[2];
            float light = (float) Math.clamp(0.55 + 0.4 * Math.abs(facing), 0.0, 1.0);
            float hue = (mesh.elementRegions()[e] * 0.137f) % 1;
            g.setColor(Color.getHSBColor(hue, facing >= 0 ? 0.35f : 0.12f, light));
            g.fill(path);
            g.setColor(new Color(40, 40, 40));
            g.draw(path);
        }
        g.dispose();
        ImageIO.write(image, "png", file);
    }

    private static double dot(Mesh mesh, int n, double[] d) {
        return mesh.nodes()[3 * n] * d[0] + mesh.nodes()[3 * n + 1] * d[1] + mesh.nodes()[3 * n + 2] * d[2];
    }
}
