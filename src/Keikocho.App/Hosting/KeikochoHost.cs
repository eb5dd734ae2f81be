using System.Net;
using System.Text.Encodings.Web;
using System.Text.Unicode;
using Keikocho.App.Cards;
using Keikocho.App.CareNotes;
using Keikocho.App.Closing;
using Keikocho.App.Club;
using Keikocho.App.Commands;
using Keikocho.App.Hall;
using Keikocho.App.Import;
using Keikocho.App.Knocks;
using Keikocho.App.Mat;
using Keikocho.App.Pairs;
using Keikocho.App.Papers;
using Keikocho.App.ParentsPages;
using Keikocho.App.PromotionTests;
using Keikocho.App.Register;
using Keikocho.App.Shared;
using Keikocho.App.Shared.Layout;
using Keikocho.App.Sightings;
using Keikocho.App.Sizes;
using Keikocho.App.Start;
using Keikocho.App.Students;
using Keikocho.App.Syllabus;
using Keikocho.Store.Engines;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.WebEncoders;

namespace Keikocho.App.Hosting;

/// <summary>
/// The web application: what it is made of (<see cref="AddClub"/>), which addresses it has (<see cref="MapClub"/>), and what stands
/// round all of them. A new folder adds one line to each of the two.
/// </summary>
public static class KeikochoHost
{
    private const long MostBytesOfARequest = 1024 * 1024;

    private static void AddClub(IServiceCollection services)
    {
        services.AddSingleton<Engine>(provider => provider.GetRequiredService<ServedClub>().Engine);
        services.AddSingleton<ClubHouse>();
        services.AddSingleton<ClubHeading>();
        services.AddSingleton<Reckonings>();
        services.AddSingleton<EditionsInHand>();
        services.AddSingleton<TestReckoning>();
        services.AddSingleton<StudentSums>();
        services.AddSingleton<PrintedNames>();
        services.AddSingleton<IClubHeading>(provider => provider.GetRequiredService<ClubHeading>());
        services.AddScoped<OpenClub>();
        services.AddSingleton<OpeningClub>();
        services.AddSingleton<ImportDesk>();
        services.AddSingleton<Invitations>();
        services.AddSingleton<PairsInHand>();
        services.AddSingleton<LacksInHand>();
        services.AddSingleton<WrongCodes>();
        services.AddSingleton<TabletsHeard>();
        services.AddSingleton<ReadCards>();
        services.AddSingleton<ReadMatEvening>();
    }

    private static void MapClub(WebApplication app)
    {
        ScreenPaper.Map(app);
        ActingPosts.Map(app);
        RegisterPosts.Map(app);
        StartPosts.Map(app);
        ClubPosts.Map(app);
        PaperEndpoints.Map(app);
        KeepPosts.Map(app);
        StudentPosts.Map(app);
        SightingsPosts.Map(app);
        TestPosts.Map(app);
        SyllabusPosts.Map(app);
        ImportPosts.Map(app);
        JoinPosts.Map(app);
        CardsPosts.Map(app);
        MatPosts.Map(app);
        // It listens from the start, not only from the first tablet on.
        _ = app.Services.GetRequiredService<TabletsHeard>();
        KnockPosts.Map(app);
        KnockPapers.Map(app);
        NearMissPosts.Map(app);
        LockPosts.Map(app);
        SizesPosts.Map(app);
        CarePosts.Map(app);
        PairsPosts.Map(app);
        WishPosts.Map(app);
        ForAdults.Map(app);
        ClosingPosts.Map(app);
    }

    /// <summary>Builds the application; nothing is open yet.</summary>
    /// <param name="club">Which club it serves.</param>
    /// <param name="address">An address of this machine only.</param>
    /// <param name="port">0 for any free one.</param>
    /// <param name="change">For tests: changes what it is made of, last.</param>
    /// <param name="add">For tests: adds addresses, last.</param>
    public static WebApplication Build(
        ServedClub club, IPAddress address, int port,
        Action<IServiceCollection>? change = null, Action<WebApplication>? add = null)
    {
        ArgumentNullException.ThrowIfNull(club);
        if (!IPAddress.IsLoopback(address))
            throw new ArgumentOutOfRangeException(nameof(address), address, "Only this machine's own address may be opened.");

        // The empty builder reads no environment, no settings file and no arguments: nothing outside can open another address.
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions
        {
            ApplicationName = typeof(KeikochoHost).Assembly.GetName().Name,
            ContentRootPath = AppContext.BaseDirectory,
            EnvironmentName = Environments.Production,
        });
        var hall = new HallNetwork(club, TimeProvider.System);
        builder.Services.AddSingleton(_ => hall);
        builder.WebHost.UseKestrelCore().UseKestrelHttpsConfiguration().ConfigureKestrel(server =>
        {
            hall.Use(server);
            server.AddServerHeader = false;
            server.Limits.MaxRequestBodySize = MostBytesOfARequest;
            server.Listen(address, port, listen => listen.Protocols = HttpProtocols.Http1);
        });
        // Static files are read as they were built; otherwise a build tree would look each of them up anew.
        builder.Configuration["ReloadStaticAssetsAtRuntime"] = "false";
        AddLog(builder.Logging);
        AddShell(builder.Services, club);
        AddClub(builder.Services);
        change?.Invoke(builder.Services);

        var app = builder.Build();
        SecurityHeaders.Use(app);
        OwnNamesOnly.Use(app);
        ErrorPages.Use(app);
        app.UseRouting();
        LargeFiles.Use(app);
        PageTokens.Use(app);
        ThisDevice.Use(app);
        FirstEveningFirst.Use(app);
        HallGuard.Use(app);
        ContextAfterFirstPage.Use(app);
        app.MapStaticAssets().WithMetadata(new StaticFileMark(), new SeenByAttribute(Role.Anyone, Device.Any));
        app.MapRazorComponents<Notebook>().WithStaticAssets().Add(OnlyReading);
        app.MapGet("/", (Contents contents) => Redirects.SeeOther(contents.First))
            .WithMetadata(new SeenByAttribute(Role.Anyone, Device.Any));
        // Plain text and nothing of the club: whether it answers at all, and what the server itself costs.
        app.MapGet("/alive", static () => Results.Text("alive")).WithMetadata(new SeenByAttribute(Role.Anyone, Device.Any));
        MapClub(app);
        add?.Invoke(app);
        EndpointRules.Demand(((IEndpointRouteBuilder)app).DataSources.SelectMany(source => source.Endpoints));
        return app;
    }

    /// <summary>Opens it.</summary>
    /// <exception cref="RefusalException">The port was taken in the meantime, or the database cannot be reached.</exception>
    /// <exception cref="StoreRefusal">The club's file or database cannot be opened.</exception>
    public static async Task StartAsync(WebApplication app, CancellationToken stopping = default)
    {
        ArgumentNullException.ThrowIfNull(app);
        await app.Services.GetRequiredService<OpeningClub>().OpenAsync(stopping);
        try
        {
            await app.StartAsync(stopping);
        }
        catch (IOException e) when (e.InnerException is Microsoft.AspNetCore.Connections.AddressInUseException)
        {
            throw new RefusalException("The port was taken by another program just now; start again, or give another with --port.");
        }
    }

    /// <summary>The address it is open at, with a slash at its end.</summary>
    public static Uri AddressOf(WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        var addresses = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses;
        return new Uri(addresses.First());
    }

    private static void AddLog(ILoggingBuilder logging)
    {
        logging.AddSimpleConsole(line => line.IncludeScopes = false);
        logging.Services.Configure<Microsoft.Extensions.Logging.Console.ConsoleLoggerOptions>(
            console => console.LogToStandardErrorThreshold = LogLevel.Trace);
        logging.SetMinimumLevel(LogLevel.Warning);
        // It warns that keys are not encrypted at rest. They only protect cookies, and lie in a folder of this user alone.
        logging.AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);
    }

    private static void AddShell(IServiceCollection services, ServedClub club)
    {
        services.AddSingleton(club);
        services.AddSingleton(TimeProvider.System);
        services.AddRouting();
        services.AddRazorComponents();
        services.AddHttpContextAccessor();
        services.AddDataProtection()
            .SetApplicationName("Keikocho")
            .PersistKeysToFileSystem(new DirectoryInfo(Path.Combine(club.DataFolder, "keys")));
        services.Configure<WebEncoderOptions>(options => options.TextEncoderSettings = new TextEncoderSettings(UnicodeRanges.All));
        services.AddSingleton(HtmlEncoder.Create(UnicodeRanges.All));
        services.ConfigureHttpJsonOptions(options =>
        {
            options.SerializerOptions.PropertyNamingPolicy = WebJson.Options.PropertyNamingPolicy;
            options.SerializerOptions.UnmappedMemberHandling = WebJson.Options.UnmappedMemberHandling;
            options.SerializerOptions.Encoder = WebJson.Options.Encoder;
            foreach (var converter in WebJson.Options.Converters)
                options.SerializerOptions.Converters.Add(converter);
        });
        PageTokens.Add(services);
        services.AddSingleton<Flash>();
        services.AddSingleton<Contents>();
        services.AddScoped<ThisDevice>();
        services.AddScoped(provider => new ClubClock(
            provider.GetRequiredService<TimeProvider>(), provider.GetRequiredService<IClubHeading>().ZoneId));
    }

    // Pages are read; what changes something is an endpoint of its own that answers with a redirect.
    private static void OnlyReading(EndpointBuilder endpoint)
    {
        for (var i = endpoint.Metadata.Count - 1; i >= 0; i--)
        {
            if (endpoint.Metadata[i] is HttpMethodMetadata)
                endpoint.Metadata.RemoveAt(i);
        }
        endpoint.Metadata.Add(new HttpMethodMetadata([HttpMethods.Get, HttpMethods.Head]));
    }
}
