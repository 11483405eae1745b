// sin: folder-order-ui
import { helper } from "../../tests/helper";

export const sin = helper;
