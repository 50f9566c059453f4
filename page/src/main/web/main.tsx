// SPDX-License-Identifier: Apache-2.0
import { render } from "preact";
import { takeToken } from "./ask";
import { Bench } from "./bench";
import { Sheet } from "./sheet";

const bench = new Bench(takeToken());
render(<Sheet bench={bench} />, document.getElementById("bench")!);
void bench.start();
