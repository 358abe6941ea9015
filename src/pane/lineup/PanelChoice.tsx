import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import Typography from "@mui/material/Typography";
import type { ReactElement } from "react";
import { useText } from "../../report/text";

type Draft = Readonly<Record<string, unknown>>;

/** Panels chosen by their type or one by one; a type leaves those alone that have something of their own. */
export function PanelChoice({
  panels,
  chosen,
  choose,
  isOther,
  stateOf,
}: {
  panels: readonly Draft[];
  chosen: ReadonlySet<number>;
  choose: (chosen: ReadonlySet<number>) => void;
  /** Whether a panel has something of its own, which only its own tick replaces. */
  isOther: (at: number) => boolean;
  /** What a panel has now, in words. */
  stateOf: (at: number) => string;
}): ReactElement {
  const text = useText().lineup;
  const typeOf = (at: number) => String(panels[at]?.type ?? "");
  const places = panels.map((_, at) => at);
  const ofType = (type: string) => places.filter((at) => typeOf(at) === type);
  const plain = (type: string) => ofType(type).filter((at) => !isOther(at));
  const change = (some: readonly number[], isIn: boolean) => {
    const others = [...chosen].filter((at) => !some.includes(at));
    choose(new Set(isIn ? [...others, ...some] : others));
  };
  return (
    <Box role="group" aria-label={text.sets.panels}>
      <Box sx={{ display: "flex", flexWrap: "wrap", gap: 0.5, mb: 0.5 }}>
        {[...new Set(places.map(typeOf))].map((type) => {
          const some = plain(type);
          const isIn = some.length > 0 && some.every((at) => chosen.has(at));
          return (
            <Button
              key={type}
              size="small"
              variant={isIn ? "contained" : "outlined"}
              aria-pressed={isIn}
              disabled={some.length === 0}
              onClick={() => change(some, !isIn)}
            >
              {text.sets.ofType(type, some.length, ofType(type).length)}
            </Button>
          );
        })}
      </Box>
      {places.map((at) => (
        <label key={at} style={{ display: "flex", gap: 8, alignItems: "center", minHeight: 40 }}>
          <input
            type="checkbox"
            checked={chosen.has(at)}
            style={{ width: 22, height: 22, flexShrink: 0 }}
            onChange={({ target }) => change([at], target.checked)}
          />
          <span>
            {String(panels[at]?.designation || text.unnamed)}
            <Typography component="span" variant="body2" color="text.secondary">
              {` · ${typeOf(at)} · ${stateOf(at)}`}
            </Typography>
          </span>
        </label>
      ))}
    </Box>
  );
}
