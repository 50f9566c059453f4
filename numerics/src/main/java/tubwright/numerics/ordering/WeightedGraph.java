// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.ordering;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * A graph with weights, one level of a multilevel scheme. A vertex of a coarse level stands for two of the level below,
 * or one.
 *
 * @param start start of each vertex's neighbours, length vertices + 1
 * @param neighbours neighbours of all vertices
 * @param edgeWeight weight of each entry of {@code neighbours}: finest edges it stands for
 * @param weight weight of each vertex: finest vertices it stands for
 */
record WeightedGraph(int[] start, int[] neighbours, int[] edgeWeight, int[] weight) {

    int vertices() {
        return weight.length;
    }

    int totalWeight() {
        return Arrays.stream(weight).sum();
    }

    /**
     * The coarser graph by heavy-edge matching (Karypis and Kumar 1998): neighbours tied by the heaviest edge become one.
     *
     * @param coarseOf receives the coarse vertex of each vertex
     * @param heaviest no coarse vertex grows beyond this weight
     */
    WeightedGraph coarsen(int[] coarseOf, int heaviest, SplittableRandom random) {
        int n = vertices();
        Arrays.fill(coarseOf, 0, n, -1);
        int[] visit = visitingOrder(random);
        int[] first = new int[n];
        int[] second = new int[n];
        Arrays.fill(second, -1);
        int count = 0;
        int lonely = -1;
        for (int v : visit) {
            if (coarseOf[v] >= 0) {
                continue;
            }
            int mate = -1;
            int best = -1;
            for (int p = start[v]; p < start[v + 1]; p++) {
                int w = neighbours[p];
                if (coarseOf[w] < 0 && edgeWeight[p] > best && weight[v] + weight[w] <= heaviest) {
                    best = edgeWeight[p];
                    mate = w;
                }
            }
            if (mate < 0 && start[v] == start[v + 1]) {
                // Vertices without neighbours would never be matched: pair them with one another.
                if (lonely >= 0 && weight[v] + weight[lonely] <= heaviest) {
                    int home = coarseOf[lonely];
                    coarseOf[v] = home;
                    second[home] = v;
                    lonely = -1;
                    continue;
                }
                lonely = v;
            }
            first[count] = v;
            second[count] = mate;
            coarseOf[v] = count;
            if (mate >= 0) {
                coarseOf[mate] = count;
            }
            count++;
        }
        return contract(coarseOf, first, second, count);
    }

    /** A random order, vertices of few neighbours first, for they have the least choice. */
    private int[] visitingOrder(SplittableRandom random) {
        int n = vertices();
        int[] shuffled = new int[n];
        for (int i = 0; i < n; i++) {
            int j = random.nextInt(i + 1);
            shuffled[i] = shuffled[j];
            shuffled[j] = i;
        }
        int classes = 64;
        int[] place = new int[classes + 1];
        for (int v = 0; v < n; v++) {
            place[Math.min(classes - 1, start[v + 1] - start[v]) + 1]++;
        }
        for (int c = 0; c < classes; c++) {
            place[c + 1] += place[c];
        }
        int[] order = new int[n];
        for (int v : shuffled) {
            order[place[Math.min(classes - 1, start[v + 1] - start[v])]++] = v;
        }
        return order;
    }

    private WeightedGraph contract(int[] coarseOf, int[] first, int[] second, int count) {
        int[] coarseStart = new int[count + 1];
        int[] coarseNeighbours = new int[neighbours.length];
        int[] coarseEdgeWeight = new int[neighbours.length];
        int[] coarseWeight = new int[count];
        int[] placeOf = new int[count];
        Arrays.fill(placeOf, -1);
        int size = 0;
        for (int c = 0; c < count; c++) {
            int from = size;
            for (int half = 0; half < 2; half++) {
                int v = half == 0 ? first[c] : second[c];
                if (v < 0) {
                    continue;
                }
                coarseWeight[c] += weight[v];
                for (int p = start[v]; p < start[v + 1]; p++) {
                    int d = coarseOf[neighbours[p]];
                    if (d == c) {
                        continue;
                    }
                    if (placeOf[d] >= from) {
                        coarseEdgeWeight[placeOf[d]] += edgeWeight[p];
                    } else {
                        placeOf[d] = size;
                        coarseNeighbours[size] = d;
                        coarseEdgeWeight[size++] = edgeWeight[p];
                    }
                }
            }
            coarseStart[c + 1] = size;
        }
        return new WeightedGraph(
                coarseStart,
                Arrays.copyOf(coarseNeighbours, size),
                Arrays.copyOf(coarseEdgeWeight, size),
                coarseWeight);
    }
}
