// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.ordering;

import java.util.Arrays;

/** Vertices by gain, largest first, changeable: a binary heap that knows where each vertex sits. Ties go by number. */
final class GainHeap {
    private final int[] place;
    private final int[] gain;
    private int[] heap = new int[64];
    private int size;

    GainHeap(int vertices) {
        place = new int[vertices];
        gain = new int[vertices];
        Arrays.fill(place, -1);
    }

    boolean isEmpty() {
        return size == 0;
    }

    int top() {
        return heap[0];
    }

    int gain(int vertex) {
        return gain[vertex];
    }

    boolean contains(int vertex) {
        return place[vertex] >= 0;
    }

    void clear() {
        for (int i = 0; i < size; i++) {
            place[heap[i]] = -1;
        }
        size = 0;
    }

    void insert(int vertex, int vertexGain) {
        if (size == heap.length) {
            heap = Arrays.copyOf(heap, 2 * size);
        }
        gain[vertex] = vertexGain;
        heap[size] = vertex;
        place[vertex] = size;
        up(size++);
    }

    void remove(int vertex) {
        int hole = place[vertex];
        place[vertex] = -1;
        int last = heap[--size];
        if (last != vertex) {
            heap[hole] = last;
            place[last] = hole;
            up(hole);
            down(place[last]);
        }
    }

    void change(int vertex, int by) {
        gain[vertex] += by;
        if (by > 0) {
            up(place[vertex]);
        } else {
            down(place[vertex]);
        }
    }

    private boolean before(int a, int b) {
        return gain[a] > gain[b] || gain[a] == gain[b] && a < b;
    }

    private void up(int from) {
        int i = from;
        int vertex = heap[i];
        while (i > 0) {
            int parent = (i - 1) / 2;
            if (!before(vertex, heap[parent])) {
                break;
            }
            heap[i] = heap[parent];
            place[heap[i]] = i;
            i = parent;
        }
        heap[i] = vertex;
        place[vertex] = i;
    }

    private void down(int from) {
        int i = from;
        int vertex = heap[i];
        while (2 * i + 1 < size) {
            int child = 2 * i + 1;
            if (child + 1 < size && before(heap[child + 1], heap[child])) {
                child++;
            }
            if (!before(heap[child], vertex)) {
                break;
            }
            heap[i] = heap[child];
            place[heap[i]] = i;
            i = child;
        }
        heap[i] = vertex;
        place[vertex] = i;
    }
}
