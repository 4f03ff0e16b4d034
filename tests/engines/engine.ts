/** What the journeys ask of a browser: the little that three engines have in common. */
export interface Engine {
	/** Opens an address. Where only the fragment differs, the page stays. */
	go(url: string): Promise<void>;
	reload(): Promise<void>;
	/** Calls a function in the page. It can use nothing of this process but its arguments, which travel as JSON. */
	run<Args extends readonly unknown[], Answer>(
		work: (...args: Args) => Answer | Promise<Answer>,
		...args: Args
	): Promise<Answer>;
	/** Runs a script in the page, as a script element would. */
	load(script: string): Promise<void>;
	/** A tap at a point of the viewport, CSS px. */
	tap(x: number, y: number): Promise<void>;
	/** Types into what has the focus. */
	type(text: string): Promise<void>;
	/** Chooses a file in the one file input of the page. */
	choose(path: string): Promise<void>;
	/** Where downloads land. */
	readonly downloads: string;
	/** What the page logged as an error, and exceptions that nobody caught. */
	errors(): Promise<readonly string[]>;
	/** Requests that left `origin`. */
	leaks(origin: string): string[];
	/** Of the browser itself; all its other processes descend from it. */
	readonly processId: number;
	/** Ends all processes of the browser at once, as a crash or an empty battery does. */
	kill(): Promise<void>;
	close(): Promise<void>;
}

export interface EngineMaker {
	readonly name: string;
	/** Whether what a page stores outlives the browser. */
	readonly keepsData: boolean;
	/** The folder to serve for this engine instead of the built app, made inside `scratch`. */
	served(dist: string, scratch: string): string;
	/** Starts the browser on a profile, which is a folder. */
	open(profile: string): Promise<Engine>;
}

/** CSS px, as phones have them. WebKitGTK's window cannot be narrower than its toolbar and is a little wider. */
export const viewport = { width: 390, height: 844 } as const;
