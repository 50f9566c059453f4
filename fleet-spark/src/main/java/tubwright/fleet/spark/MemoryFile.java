// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.spark;

import java.io.ByteArrayOutputStream;
import org.apache.parquet.io.DelegatingSeekableInputStream;
import org.apache.parquet.io.InputFile;
import org.apache.parquet.io.OutputFile;
import org.apache.parquet.io.PositionOutputStream;
import org.apache.parquet.io.SeekableInputStream;

/** A file that is never on a disk. Written once from the start, then read. */
final class MemoryFile implements OutputFile, InputFile {
    private final ByteArrayOutputStream written = new ByteArrayOutputStream();

    MemoryFile() {}

    MemoryFile(byte[] content) {
        written.writeBytes(content);
    }

    byte[] bytes() {
        return written.toByteArray();
    }

    @Override
    public PositionOutputStream create(long blockSize) {
        return new PositionOutputStream() {
            @Override
            public long getPos() {
                return written.size();
            }

            @Override
            public void write(int b) {
                written.write(b);
            }

            @Override
            public void write(byte[] bytes, int from, int length) {
                written.write(bytes, from, length);
            }
        };
    }

    @Override
    public PositionOutputStream createOrOverwrite(long blockSize) {
        written.reset();
        return create(blockSize);
    }

    @Override
    public boolean supportsBlockSize() {
        return false;
    }

    @Override
    public long defaultBlockSize() {
        return 0;
    }

    @Override
    public String getPath() {
        return "rows in memory";
    }

    @Override
    public long getLength() {
        return written.size();
    }

    @Override
    public SeekableInputStream newStream() {
        byte[] content = bytes();
        Seekable in = new Seekable(content);
        return new DelegatingSeekableInputStream(in) {
            @Override
            public long getPos() {
                return in.at();
            }

            @Override
            public void seek(long position) {
                in.to((int) position);
            }
        };
    }

    private static final class Seekable extends java.io.ByteArrayInputStream {
        Seekable(byte[] content) {
            super(content);
        }

        int at() {
            return pos;
        }

        void to(int position) {
            pos = position;
        }
    }
}
