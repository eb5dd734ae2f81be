using Keikocho.App.Club.About;
using Keikocho.App.Club.Adults;
using Keikocho.App.Club.Closures;
using Keikocho.App.Club.Feed;
using Keikocho.App.Club.Hours;
using Keikocho.App.Club.Settings;
using Keikocho.App.Club.Terms;
using Keikocho.App.Shared;

namespace Keikocho.App.Club;

/// <summary>The endpoints of the club's page: one for each of its forms.</summary>
public static class ClubPosts
{
    /// <summary>Adds them.</summary>
    public static void Map(WebApplication app)
    {
        var seen = new SeenByAttribute(Role.Instructor, Device.Laptop);
        app.MapPost(ClubAddress.About, AboutPosts.ChangeAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.Hall, HallPosts.ChangeAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.Place, EmergencyPosts.PlaceAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.Welfare, EmergencyPosts.WelfareAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.AddObstacle, ObstaclePosts.AddAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.RemoveObstacle, ObstaclePosts.RemoveAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.AddProgramme, ProgrammePosts.AddAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.ChangeProgramme, ProgrammePosts.ChangeAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.AddHour, HourPosts.AddAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.ChangeHour, HourPosts.ChangeAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.EndHour, HourPosts.EndAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.AddTerm, TermPosts.AddAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.AddClosure, ClosurePosts.AddAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.RemoveClosure, ClosurePosts.RemoveAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.AddTest, TestPosts.AddAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.RemoveTest, TestPosts.RemoveAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.AddAdult, AdultPosts.AddAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.ChangeAdult, AdultPosts.ChangeAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.EndAdult, AdultPosts.EndAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.ConfirmFalls, AdultPosts.ConfirmFallsAsync).WithMetadata(seen);
        app.MapPost(ClubAddress.Set, SettingPosts.SetAsync).WithMetadata(seen);
        app.MapGet(ClubAddress.Feed, FeedEndpoint.Read).WithMetadata(new SeenByAttribute(Role.Teaching, Device.Laptop));
    }
}
