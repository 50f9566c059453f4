// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.pardiso;

import java.io.IOException;
import java.io.InputStream;
import java.net.URL;
import java.net.URLConnection;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Finds the shared libraries in the jar that carries them and unpacks those needed on this machine. */
final class NativeLibraries {
    private static final String VERSION = "2025.3";

    private final String resourceFolder;
    /** To be loaded in this order: the thread library, then the door to the rest. */
    private final List<String> doors;
    /** Unpacked beside them; the door loads what it needs. */
    private final List<String> behind;

    private NativeLibraries(String resourceFolder, List<String> doors, List<String> behind) {
        this.resourceFolder = resourceFolder;
        this.doors = doors;
        this.behind = behind;
    }

    /** @throws IOException if there are none for this platform */
    static NativeLibraries forThisPlatform() throws IOException {
        String os = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        String arch = System.getProperty("os.arch").toLowerCase(Locale.ROOT);
        if (!arch.equals("amd64") && !arch.equals("x86_64")) {
            throw new IOException("there is no native solver for processor type " + arch);
        }
        if (os.contains("linux")) {
            return new NativeLibraries(
                    "org/bytedeco/mkl/linux-x86_64/",
                    List.of("libiomp5.so", "libmkl_rt.so.2"),
                    Stream.concat(
                                    Stream.of("libmkl_core.so.2", "libmkl_intel_lp64.so.2", "libmkl_intel_thread.so.2"),
                                    linuxKernels().stream())
                            .toList());
        }
        if (os.contains("windows")) {
            return new NativeLibraries(
                    "org/bytedeco/mkl/windows-x86_64/",
                    List.of("libiomp5md.dll", "mkl_rt.2.dll"),
                    List.of(
                            "mkl_core.2.dll",
                            "mkl_intel_thread.2.dll",
                            "mkl_def.2.dll",
                            "mkl_avx2.2.dll",
                            "mkl_avx512.2.dll"));
        }
        throw new IOException("there is no native solver for " + os);
    }

    /** Only the computing kernels this processor can use: each is some 50 MB. */
    private static List<String> linuxKernels() throws IOException {
        Path info = Path.of("/proc/cpuinfo");
        String flags = "";
        if (Files.isReadable(info)) {
            try (var lines = Files.lines(info)) {
                flags = lines.filter(line -> line.startsWith("flags"))
                                .findFirst()
                                .orElse("") + " ";
            }
        }
        if (flags.contains(" avx512f ")) {
            return List.of("libmkl_def.so.2", "libmkl_avx2.so.2", "libmkl_avx512.so.2");
        }
        return flags.contains(" avx2 ")
                ? List.of("libmkl_def.so.2", "libmkl_avx2.so.2")
                : List.of("libmkl_def.so.2", "libmkl_mc3.so.2");
    }

    /** Unpacks what is not there yet; returns the libraries to load, in order. */
    List<Path> unpack() throws IOException {
        Path folder = cacheFolder();
        for (String name : behind) {
            unpack(folder, name);
        }
        List<Path> paths = new ArrayList<>();
        for (String name : doors) {
            paths.add(unpack(folder, name));
        }
        return paths;
    }

    private Path unpack(Path folder, String name) throws IOException {
        URL source = NativeLibraries.class.getClassLoader().getResource(resourceFolder + name);
        if (source == null) {
            throw new IOException("the class path has no " + name);
        }
        Path target = folder.resolve(name);
        URLConnection connection = source.openConnection();
        long size = connection.getContentLengthLong();
        if (Files.exists(target) && Files.size(target) == size) {
            return target;
        }
        Files.createDirectories(folder);
        Path partial = Files.createTempFile(folder, name, ".part");
        try (InputStream in = connection.getInputStream()) {
            Files.copy(in, partial, StandardCopyOption.REPLACE_EXISTING);
            move(partial, target);
        } finally {
            Files.deleteIfExists(partial);
        }
        return target;
    }

    private static void move(Path partial, Path target) throws IOException {
        try {
            Files.move(partial, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException unsupported) {
            Files.move(partial, target, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static Path cacheFolder() {
        String property = System.getProperty("tubwright.cache", "");
        String xdg = System.getenv("XDG_CACHE_HOME");
        Path root;
        if (!property.isEmpty()) {
            root = Path.of(property);
        } else if (xdg != null && !xdg.isEmpty()) {
            root = Path.of(xdg, "tubwright");
        } else {
            root = Path.of(System.getProperty("user.home"), ".cache", "tubwright");
        }
        return root.resolve("native-" + VERSION);
    }
}
