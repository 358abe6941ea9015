/** An iterable read with a look at what comes next. */
export const ahead = <T>(items: Iterable<T>) => {
  const from = items[Symbol.iterator]();
  const queue: T[] = [];
  const pull = (): boolean => {
    const { done, value } = from.next();
    if (!done) queue.push(value);
    return !done;
  };
  return {
    next: (): T | undefined => {
      if (queue.length > 0) return queue.shift();
      const { done, value } = from.next();
      return done ? undefined : value;
    },
    peek: (index: number): T | undefined => {
      while (queue.length <= index) if (!pull()) return undefined;
      return queue[index];
    },
    back: (item: T) => queue.unshift(item),
  };
};
