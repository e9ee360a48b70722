// What a service worker works with, as far as ours does: TypeScript has these only in place of a page's.

export interface ExtendableEvent extends Event {
  waitUntil(work: Promise<unknown>): void;
}

export interface FetchEvent extends ExtendableEvent {
  readonly request: Request;
  respondWith(response: Promise<Response>): void;
}

export interface KeeperScope {
  readonly registration: { readonly scope: string };
  readonly location: { readonly href: string };
  readonly clients: {
    claim(): Promise<void>;
    matchAll(): Promise<readonly { postMessage(message: unknown): void }[]>;
  };
  skipWaiting(): Promise<void>;
  addEventListener(kind: "install" | "activate", listener: (event: ExtendableEvent) => void): void;
  addEventListener(kind: "fetch", listener: (event: FetchEvent) => void): void;
}

declare global {
  /** Written by the build; paths from the site's folder. */
  const SITE: {
    readonly edition: string;
    readonly pages: readonly string[];
    readonly files: readonly string[];
    /** By the word of what they draw with. */
    readonly views: Readonly<Record<string, readonly string[]>>;
  };
}
